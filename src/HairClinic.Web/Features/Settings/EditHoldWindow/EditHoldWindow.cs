using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Shell.Edits;

namespace HairClinic.Web.Features.Settings;

/// <summary>One hold window; every open bond's due date is worked out anew after a change.</summary>
public sealed class EditHoldWindow(ClinicDbFactory databases, WriteOnce writes, IClock clock)
    : RowEditor<HoldWindowRule, EditHoldWindow.Input>(databases, writes)
{
    public async Task<Screen?> OpenAsync(Guid? id, CancellationToken cancellation)
    {
        await using var db = Databases.Open();
        var bases = await db
            .BaseMaterials.Where(b => !b.Retired)
            .OrderBy(b => b.Name)
            .Select(b => new RowOption(b.Id, b.Name))
            .ToListAsync(cancellation);
        var adhesives = await db
            .Products.Where(p => !p.Retired && (p.Kind == ProductKind.Adhesive || p.Kind == ProductKind.Tape))
            .OrderBy(p => p.Name)
            .Select(p => new RowOption(p.Id, p.Name))
            .ToListAsync(cancellation);
        var input = id is null ? new Input { EarliestWeeks = 4, LatestWeeks = 6 } : await ReadAsync(db, id.Value, cancellation);
        return input is null ? null : new Screen(input, bases, adhesives);
    }

    protected override IQueryable<HoldWindowRule> Rows(ClinicDb db) => db.HoldWindowRules;

    protected override Input Read(HoldWindowRule row) => Input.From(row);

    protected override HoldWindowRule Make(Input input) => new(Guid.CreateVersion7(), input.EarliestWeeks ?? 0, input.LatestWeeks ?? 0);

    protected override void Write(ClinicDb db, HoldWindowRule row, Input input, bool isNew)
    {
        var stoodForAll = !isNew && row is { BaseMaterialId: null, AdhesiveId: null, Attachment: null };
        var standsForAll = !input.Retire && input is { BaseMaterialId: null, AdhesiveId: null, Attachment: null };
        if (stoodForAll && !standsForAll)
            throw new Refusal("This window stands for everything no other names. Its weeks can change, but it stays.");
        row.Edit(input.BaseMaterialId, input.AdhesiveId, input.Attachment, input.EarliestWeeks ?? 0, input.LatestWeeks ?? 0);
        if (input.Retire)
            // Of settings only a window is taken out of the book altogether: bonds keep their dates and reasons, so the row can go.
            db.HoldWindowRules.Remove(row);
        db.WorkItems.Add(WorkItemFactory.RefreshDueDates(clientId: null, clock.GetCurrentInstant()));
    }

    protected override Refusal? TwiceBy(DbUpdateException e, Input input) =>
        ConcurrentEdits.IsUniqueViolation(e, "hold_window_rules")
            ? new Refusal("There is a window for this base, adhesive and attachment already. Change that one.")
            : null;

    public sealed record Screen(Input Input, IReadOnlyList<RowOption> Bases, IReadOnlyList<RowOption> Adhesives);

    public sealed record Input : RowInput
    {
        [Field("Base", Nothing = "any base")]
        public Guid? BaseMaterialId { get; set; }

        [Field("Adhesive", Nothing = "any adhesive")]
        public Guid? AdhesiveId { get; set; }

        [Field("Attachment", Nothing = "any attachment")]
        public Attachment? Attachment { get; set; }

        [Field("Earliest week")]
        public int? EarliestWeeks { get; set; }

        [Field("Latest week")]
        public int? LatestWeeks { get; set; }

        public static Input From(HoldWindowRule rule) =>
            new()
            {
                BaseMaterialId = rule.BaseMaterialId,
                AdhesiveId = rule.AdhesiveId,
                Attachment = rule.Attachment,
                EarliestWeeks = rule.EarliestWeeks,
                LatestWeeks = rule.LatestWeeks,
            };
    }
}
