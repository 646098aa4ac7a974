using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Shell.Edits;

namespace HairClinic.Web.Features.Settings;

/// <summary>A workshop and the days on which it makes nothing.</summary>
public sealed class EditWorkshop(ClinicDbFactory databases, WriteOnce writes, IClock clock)
    : RowEditor<Workshop, EditWorkshop.Input>(databases, writes)
{
    public async Task<Input?> OpenAsync(Guid? id, CancellationToken cancellation)
    {
        if (id is null)
            return new Input();
        await using var db = Databases.Open();
        return await ReadAsync(db, id.Value, cancellation);
    }

    protected override IQueryable<Workshop> Rows(ClinicDb db) => db.Workshops.Include(w => w.Closures);

    protected override Input Read(Workshop row) => Input.From(row);

    protected override Workshop Make(Input input) => new(Guid.CreateVersion7(), input.Name);

    protected override void Write(ClinicDb db, Workshop row, Input input, bool isNew)
    {
        row.Rename(input.Name);
        DaysOffInput.Reconcile(row.Closures, input.Closures, row.RemoveClosure, row.AddClosure);
        row.SetClaimDays(input.ClaimDays ?? -1);
        row.SetRemakesAndInspection(input.RemadeOfTwenty ?? -1, input.InspectionDays ?? -1);
        // Closures and remakes move the day on which every client of it must be ordered for.
        db.WorkItems.Add(WorkItemFactory.Recalculate(clock.GetCurrentInstant()));
        if (input.Retire)
            row.Retire();
    }

    protected override Refusal? TwiceBy(DbUpdateException e, Input input) =>
        ConcurrentEdits.IsUniqueViolation(e, "workshops") ? new Refusal("There is a workshop called {0} already.", input.Name) : null;

    public sealed record Input : RowInput
    {
        [Field("Name")]
        public string Name { get; set; } = "";

        [Field("Closures")]
        public List<DaysOffInput> Closures { get; set; } = [];

        /// <summary>Of twenty orders so many are expected to be made again.</summary>
        [Field("Made again, of twenty orders")]
        public int? RemadeOfTwenty { get; set; } = 1;

        /// <summary>Days from arrival until such a unit is on its way back.</summary>
        [Field("Days until it is sent back")]
        public int? InspectionDays { get; set; } = 7;

        /// <summary>Days from arrival within which it takes a claim.</summary>
        [Field("Days for a claim")]
        public int? ClaimDays { get; set; } = 7;

        public static Input From(Workshop workshop) =>
            new()
            {
                Name = workshop.Name,
                RemadeOfTwenty = workshop.RemadeOfTwenty,
                InspectionDays = workshop.InspectionDays,
                ClaimDays = workshop.ClaimDays,
                Closures = [.. workshop.Closures.Select(DaysOffInput.FromRow).OrderBy(c => c.From)],
            };
    }
}
