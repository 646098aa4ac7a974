using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.Practices.Parts;
using HairClinic.Web.Practices;
using HairClinic.Web.Workers;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Features.Practices.Rhythm;

/// <summary>What holds for the whole practice: its name and language, its cure, and how far ahead it looks.</summary>
public sealed class Rhythm(ClinicDbFactory databases, WriteOnce writes, CultureBook cultures, CurrentActor current, IClock clock)
{
    public async Task<Input> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return Input.Of(await db.PracticeSettings.AsNoTracking().SingleAsync(cancellation));
    }

    /// <exception cref="Refusal">A number no practice can work by.</exception>
    /// <exception cref="OvertakenException">Someone else changed it since the form opened.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(key, nameof(Rhythm), input, db => WriteAsync(db, input, cancellation), cancellation);

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var settings = await db.PracticeSettings.SingleAsync(cancellation);
        Guarded.Hold(db, settings, input.Version);
        if (settings.CureHours != input.CureHours || settings.DaysBeforeEvent != input.DaysBeforeEvent)
            db.WorkItems.Add(WorkItems.RefreshDueDates(clientId: null, clock.GetCurrentInstant()));
        settings.Rename(input.Name, input.Region, input.Culture);
        settings.SetRhythm(input.CureHours ?? 0, input.DaysBeforeEvent ?? 0, input.OpeningSoonDays ?? 0, input.SlotMinutes);
        settings.LetClientsMove(input.ClientMoveHours ?? -1);
        if (settings.GrantDaysAfterVisit != input.GrantDaysAfterVisit && current.Person.StaffRole != StaffRole.Owner)
            throw new Refusal("Only an owner changes for how long a visit opens a record to another salon.");
        settings.KeepGrantsFor(input.GrantDaysAfterVisit ?? -1);
        if (settings.PreparationDays != input.PreparationDays || settings.GapChancePercent != input.GapChancePercent)
            db.WorkItems.Add(WorkItems.Reckon(clock.GetCurrentInstant()));
        settings.OrderAhead(input.PreparationDays ?? -1, input.GapChancePercent ?? 0);
        cultures.Forget(settings.PracticeId);
        return new Outcome(settings.Name);
    }

    public sealed record Input : IEditable
    {
        public uint Version { get; set; }

        public bool Retire { get; set; }

        public string Name { get; set; } = "";

        public string Region { get; set; } = "";

        public string Culture { get; set; } = "";

        public int? CureHours { get; set; }

        public int? DaysBeforeEvent { get; set; }

        public int? OpeningSoonDays { get; set; }

        public int SlotMinutes { get; set; }

        public int? ClientMoveHours { get; set; }

        /// <summary>Days after a visit in another salon than their home that its people may still open a client's record.</summary>
        public int? GrantDaysAfterVisit { get; set; }

        /// <summary>Days from arrival until a unit can be bonded.</summary>
        public int? PreparationDays { get; set; }

        /// <summary>The chance of a gap that is accepted.</summary>
        public int? GapChancePercent { get; set; }

        public static Input Of(PracticeSettings settings) =>
            new()
            {
                Version = settings.Version,
                Name = settings.Name,
                Region = settings.Region,
                Culture = settings.Culture,
                CureHours = settings.CureHours,
                DaysBeforeEvent = settings.DaysBeforeEvent,
                OpeningSoonDays = settings.OpeningSoonDays,
                SlotMinutes = settings.SlotMinutes,
                ClientMoveHours = settings.ClientMoveHours,
                GrantDaysAfterVisit = settings.GrantDaysAfterVisit,
                PreparationDays = settings.PreparationDays,
                GapChancePercent = settings.GapChancePercent,
            };

        public IEnumerable<SaidLine> Said() =>
            [
                new("Name", Name),
                new("Country", Region),
                new("Language", Culture),
                new("Hours of cure", $"{CureHours}"),
                new("Days before an event", $"{DaysBeforeEvent}"),
                new("Opening soon, days", $"{OpeningSoonDays}"),
                new("Bookings start every", $"{SlotMinutes}"),
                new("Clients change a visit until, hours before", $"{ClientMoveHours}"),
                new("A visit opens the record to its salon for, days after", $"{GrantDaysAfterVisit}"),
                new("Days from arrival until a unit can be bonded", $"{PreparationDays}"),
                new("Accepted chance of a day with no unit that still wears well, percent", $"{GapChancePercent}"),
            ];
    }

    public sealed record Outcome(string Name);
}
