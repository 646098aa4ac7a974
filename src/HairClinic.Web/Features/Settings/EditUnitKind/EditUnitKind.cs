using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Shell.Edits;

namespace HairClinic.Web.Features.Settings;

/// <summary>A kind of unit: a base from a workshop. Another base means another hold window, so due dates follow.</summary>
public sealed class EditUnitKind(ClinicDbFactory databases, WriteOnce writes, IClock clock)
    : RowEditor<UnitKind, EditUnitKind.Input>(databases, writes)
{
    public async Task<Screen?> OpenAsync(Guid? id, CancellationToken cancellation)
    {
        await using var db = Databases.Open();
        var bases = await db
            .BaseMaterials.Where(b => !b.Retired)
            .OrderBy(b => b.Name)
            .Select(b => new RowOption(b.Id, b.Name))
            .ToListAsync(cancellation);
        var workshops = await db
            .Workshops.Where(w => !w.Retired)
            .OrderBy(w => w.Name)
            .Select(w => new RowOption(w.Id, w.Name))
            .ToListAsync(cancellation);
        var input = id is null
            ? new Input { BaseMaterialId = bases.FirstOrDefault()?.Id ?? Guid.Empty }
            : await ReadAsync(db, id.Value, cancellation);
        if (input is null)
            return null;
        var spares = await db.UnitKinds.Where(k => k.Id == id).Select(k => (int?)k.Spares).SingleOrDefaultAsync(cancellation);
        return new Screen(input, bases, workshops) { Spares = spares };
    }

    protected override IQueryable<UnitKind> Rows(ClinicDb db) => db.UnitKinds;

    protected override Input Read(UnitKind row) => Input.From(row);

    protected override UnitKind Make(Input input) => new(Guid.CreateVersion7(), input.Name, input.BaseMaterialId, input.WorkshopId);

    protected override void Write(ClinicDb db, UnitKind row, Input input, bool isNew)
    {
        if (row.BaseMaterialId != input.BaseMaterialId)
            db.WorkItems.Add(WorkItemFactory.RefreshDueDates(clientId: null, clock.GetCurrentInstant()));
        row.Edit(input.Name, input.BaseMaterialId, input.WorkshopId);
        if (row.LeadHalfDays != input.LeadHalfDays || row.LeadNineInTenDays != input.LeadNineInTenDays)
            db.WorkItems.Add(WorkItemFactory.Recalculate(clock.GetCurrentInstant()));
        row.SetLeadTimes(input.LeadHalfDays ?? 0, input.LeadNineInTenDays ?? 0);
        if (input.Retire)
            row.Retire();
    }

    protected override Refusal? TwiceBy(DbUpdateException e, Input input) =>
        ConcurrentEdits.IsUniqueViolation(e, "unit_kinds") ? new Refusal("There is a kind of unit called {0} already.", input.Name) : null;

    public sealed record Screen(Input Input, IReadOnlyList<RowOption> Bases, IReadOnlyList<RowOption> Workshops)
    {
        /// <summary>Always ready beside the one worn; null for a kind that is new. The rule is changed on a page of its own, beside what it costs.</summary>
        public int? Spares { get; init; }
    }

    public sealed record Input : RowInput
    {
        [Field("Name")]
        public string Name { get; set; } = "";

        [Field("Base")]
        public Guid BaseMaterialId { get; set; }

        [Field("Workshop", Nothing = "workshop not known")]
        public Guid? WorkshopId { get; set; }

        /// <summary>Days from order to arrival in half of the orders.</summary>
        [Field("Half of the orders take, days")]
        public int? LeadHalfDays { get; set; } = 56;

        /// <summary>Days in nine of ten.</summary>
        [Field("Nine in ten take, days")]
        public int? LeadNineInTenDays { get; set; } = 77;

        public static Input From(UnitKind kind) =>
            new()
            {
                Name = kind.Name,
                BaseMaterialId = kind.BaseMaterialId,
                WorkshopId = kind.WorkshopId,
                LeadHalfDays = kind.LeadHalfDays,
                LeadNineInTenDays = kind.LeadNineInTenDays,
            };
    }
}
