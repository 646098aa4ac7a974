using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;
using HairClinic.Web.Shell;
using HairClinic.Web.Shell.Edits;

namespace HairClinic.Web.Features.Settings;

/// <summary>What holds for the whole practice: its name and language, its cure, and how far ahead it looks.</summary>
public sealed class EditPractice(
    ClinicDbFactory databases,
    WriteOnce writes,
    PracticeCultureCache cultures,
    CurrentActor current,
    IClock clock
)
{
    public async Task<Input> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var input = Input.From(await db.PracticeSettings.AsNoTracking().SingleAsync(cancellation));
        var prepared = await db.StoredPreparations.AsNoTracking().SingleOrDefaultAsync(cancellation);
        input.Preparation = prepared?.UnderSetting(input.PreparationDays ?? 0) is { IsLearnt: true } learnt
            ? new PreparationSeen(learnt.HalfDays, learnt.NineInTenDays, learnt.Units)
            : null;
        return input;
    }

    /// <exception cref="Refusal">A number no practice can work by.</exception>
    /// <exception cref="OvertakenException">Someone else changed it since the form opened.</exception>
    public Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation) =>
        writes.RunAsync(key, nameof(EditPractice), input, db => WriteAsync(db, input, cancellation), cancellation);

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var settings = await db.PracticeSettings.SingleAsync(cancellation);
        ConcurrentEdits.ExpectVersion(db, settings, input.Version);
        if (
            settings.CureHours != input.CureHours
            || settings.DaysBeforeEvent != input.DaysBeforeEvent
            || settings.CelebrationSoundPercent != input.CelebrationSoundPercent
            || settings.JourneySoundPercent != input.JourneySoundPercent
        )
            db.WorkItems.Add(WorkItemFactory.RefreshDueDates(clientId: null, clock.GetCurrentInstant()));
        settings.SetNameAndLocale(input.Name, input.Region, input.Culture);
        settings.SetSchedulingRules(input.CureHours ?? 0, input.DaysBeforeEvent ?? 0, input.OpeningSoonDays ?? 0, input.SlotMinutes);
        settings.SetEventRule(input.CelebrationSoundPercent ?? 0, input.JourneySoundPercent ?? 0);
        settings.SetClientMoveHours(input.ClientMoveHours ?? -1);
        if (settings.GrantDaysAfterVisit != input.GrantDaysAfterVisit && current.Person.StaffRole != StaffRole.Owner)
            throw new Refusal("Only an owner changes for how long a visit opens a record to another salon.");
        settings.SetGrantDaysAfterVisit(input.GrantDaysAfterVisit ?? -1);
        if (settings.PreparationDays != input.PreparationDays || settings.GapChancePercent != input.GapChancePercent)
            db.WorkItems.Add(WorkItemFactory.Recalculate(clock.GetCurrentInstant()));
        settings.SetOrderRule(input.PreparationDays ?? -1, input.GapChancePercent ?? 0);
        cultures.Forget(settings.PracticeId);
        return new Outcome(settings.Name);
    }

    public sealed record Input : IEditInput
    {
        [FromDatabase]
        public uint Version { get; set; }

        [FormOnly]
        public bool Retire { get; set; }

        [Field("Name")]
        public string Name { get; set; } = "";

        [Field("Country", Named = true)]
        public string Region { get; set; } = "";

        [Field("Language", Named = true)]
        public string Culture { get; set; } = "";

        [Field("Hours of cure")]
        public int? CureHours { get; set; }

        [Field("Days before an event")]
        public int? DaysBeforeEvent { get; set; }

        /// <summary>The least chance that a bond is sound to the end of a celebration.</summary>
        [Field("Bond sound to the end of a celebration, percent")]
        public int? CelebrationSoundPercent { get; set; }

        /// <summary>The same for a journey.</summary>
        [Field("Bond sound to the end of a journey, percent")]
        public int? JourneySoundPercent { get; set; }

        [Field("Opening soon, days")]
        public int? OpeningSoonDays { get; set; }

        [Field("Bookings start every", Format = "{0} minutes")]
        public int SlotMinutes { get; set; }

        [Field("Clients change a visit until, hours before")]
        public int? ClientMoveHours { get; set; }

        /// <summary>Days after a visit in another salon than their home that its people may still open a client's record.</summary>
        [Field("A visit opens the record to its salon for, days after")]
        public int? GrantDaysAfterVisit { get; set; }

        /// <summary>Days from arrival until a unit can be bonded.</summary>
        [Field("Days from arrival until a unit can be bonded")]
        public int? PreparationDays { get; set; }

        /// <summary>What the practice's own units took; null while too few were seen.</summary>
        [FromDatabase]
        public PreparationSeen? Preparation { get; set; }

        /// <summary>The chance of a gap that is accepted.</summary>
        [Field("Accepted chance of a day with no unit that still wears well, percent")]
        public int? GapChancePercent { get; set; }

        public static Input From(PracticeSettings settings) =>
            new()
            {
                Version = settings.Version,
                Name = settings.Name,
                Region = settings.Region,
                Culture = settings.Culture,
                CureHours = settings.CureHours,
                DaysBeforeEvent = settings.DaysBeforeEvent,
                CelebrationSoundPercent = settings.CelebrationSoundPercent,
                JourneySoundPercent = settings.JourneySoundPercent,
                OpeningSoonDays = settings.OpeningSoonDays,
                SlotMinutes = settings.SlotMinutes,
                ClientMoveHours = settings.ClientMoveHours,
                GrantDaysAfterVisit = settings.GrantDaysAfterVisit,
                PreparationDays = settings.PreparationDays,
                GapChancePercent = settings.GapChancePercent,
            };
    }

    /// <summary>Days from arrival until a unit was bonded: half of the units, and nine in ten.</summary>
    public sealed record PreparationSeen(int HalfDays, int NineInTenDays, int Units);

    public sealed record Outcome(string Name);
}
