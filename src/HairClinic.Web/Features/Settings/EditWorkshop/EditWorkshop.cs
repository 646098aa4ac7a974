using HairClinic.Domain.Orders;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Shell.Edits;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Features.Settings;

/// <summary>A workshop and the days on which it makes nothing.</summary>
public sealed class EditWorkshop(ClinicDbFactory databases, WriteOnce writes, IClock clock)
{
    public async Task<Input?> OpenAsync(Guid? id, CancellationToken cancellation)
    {
        if (id is null)
            return new Input();
        await using var db = databases.Open();
        var workshop = await db.Workshops.AsNoTracking().Include(w => w.Closures).SingleOrDefaultAsync(w => w.Id == id, cancellation);
        return workshop is null ? null : Input.Of(workshop);
    }

    /// <exception cref="Refusal">The name is taken.</exception>
    /// <exception cref="OvertakenException">Someone else changed it since the form opened.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(key, nameof(EditWorkshop), input, db => WriteAsync(db, input, cancellation), cancellation);
        }
        catch (DbUpdateException e) when (Guarded.Taken(e, "workshops"))
        {
            throw new Refusal("There is a workshop called {0} already.", input.Name);
        }
    }

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        Workshop workshop;
        if (input.Id is { } id)
        {
            workshop = await db.Workshops.Include(w => w.Closures).SingleAsync(w => w.Id == id, cancellation);
            Guarded.Hold(db, workshop, input.Version);
            workshop.Rename(input.Name);
        }
        else
        {
            workshop = new Workshop(Guid.CreateVersion7(), input.Name);
            db.Workshops.Add(workshop);
        }
        DayRange.Match(Closures(workshop), input.Closures, workshop.Reopen, workshop.Close);
        workshop.Expect(input.RemadeOfTwenty ?? -1, input.InspectionDays ?? -1);
        // Closures and remakes move the day on which every client of it must be ordered for.
        db.WorkItems.Add(WorkItems.Recalculate(clock.GetCurrentInstant()));
        if (input.Retire)
            workshop.Retire();
        return new Outcome(workshop.Id);
    }

    private static IEnumerable<DayRange> Closures(Workshop workshop) =>
        workshop.Closures.Select(c => new DayRange
        {
            Id = c.Id,
            From = c.From,
            To = c.To,
            Reason = c.Reason,
        });

    public sealed record Input : IEditable
    {
        [FromBook]
        public Guid? Id { get; set; }

        [FromBook]
        public uint Version { get; set; }

        [OfTheForm]
        public bool Retire { get; set; }

        [Field("Name")]
        public string Name { get; set; } = "";

        [Field("Closures")]
        public List<DayRange> Closures { get; set; } = [];

        /// <summary>Of twenty orders so many are expected to be made again.</summary>
        [Field("Made again, of twenty orders")]
        public int? RemadeOfTwenty { get; set; } = 1;

        /// <summary>Days from arrival until such a unit is on its way back.</summary>
        [Field("Days until it is sent back")]
        public int? InspectionDays { get; set; } = 7;

        public static Input Of(Workshop workshop) =>
            new()
            {
                Id = workshop.Id,
                Version = workshop.Version,
                Name = workshop.Name,
                RemadeOfTwenty = workshop.RemadeOfTwenty,
                InspectionDays = workshop.InspectionDays,
                Closures = [.. EditWorkshop.Closures(workshop).OrderBy(c => c.From)],
            };
    }

    public sealed record Outcome(Guid WorkshopId);
}
