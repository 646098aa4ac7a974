using HairClinic.Web.Features.Binder.Sheets;
using Columns = HairClinic.Web.Features.Binder.Sheets.BondColumns;

namespace HairClinic.Web.Features.Binder;

/// <summary>What a row of the bonds sheet says. Null is silence: it never empties what the book knows.</summary>
public sealed record BondRow
{
    public static SheetSchema<BondRow> Table { get; } =
        new SheetSchema<BondRow>()
            .Code(Columns.Serial, r => r.Serial)
            .Code(Columns.ClientCode, r => r.ClientCode)
            .Date(Columns.AppliedOn, r => r.AppliedOn)
            .Time(Columns.AppliedAt, r => r.AppliedAt)
            .Text(Columns.Adhesive, r => r.Adhesive)
            .Code(Columns.Lot, r => r.Lot)
            .WholeNumber(Columns.Coats, r => r.Coats)
            .Choice(Columns.Attachment, r => r.Attachment)
            .YesNo(Columns.WaitsKept, r => r.WaitsKept)
            .Date(Columns.RemovedOn, r => r.RemovedOn)
            .Choice(Columns.RemovedBecause, r => r.RemovedBecause)
            .Date(Columns.LiftedOn, r => r.LiftedOn)
            .Date(Columns.LiftReportedOn, r => r.LiftReportedOn)
            .Choice(Columns.LiftZone, r => r.LiftZone)
            // Later word of a sound bond stands.
            .Date(
                Columns.LastSoundOn,
                r => r.LastSoundOn,
                (own, book) => own.LastSoundOn is { } seen && !(book.LastSoundOn > seen) ? seen : book.LastSoundOn
            )
            .Text(Columns.Stylist, r => r.Stylist)
            .Date(Columns.LiftEarliestOn, r => r.LiftEarliestOn)
            .Date(Columns.LiftLatestOn, r => r.LiftLatestOn);

    public string Serial { get; init; } = "";
    public string? ClientCode { get; init; }
    public LocalDate? AppliedOn { get; init; }
    public LocalTime? AppliedAt { get; init; }
    public string? Adhesive { get; init; }
    public string? Lot { get; init; }
    public int? Coats { get; init; }
    public Attachment? Attachment { get; init; }
    public bool? WaitsKept { get; init; }
    public LocalDate? RemovedOn { get; init; }
    public RemovalReason? RemovedBecause { get; init; }
    public LocalDate? LiftedOn { get; init; }
    public LocalDate? LiftReportedOn { get; init; }
    public LocalDate? LiftEarliestOn { get; init; }
    public LocalDate? LiftLatestOn { get; init; }
    public LiftZone? LiftZone { get; init; }
    public LocalDate? LastSoundOn { get; init; }
    public string? Stylist { get; init; }

    /// <summary>How the bond came to an end, as far as it is told; a removal for a lift without a day leaves the day unknown.</summary>
    /// <exception cref="Refusal">No lift is like that.</exception>
    public Lift? Lift =>
        LiftToldOn is not { } told ? null
        : this is { LiftedOn: null, LiftEarliestOn: { } earliest, LiftLatestOn: { } latest }
            ? new Lift(told, null, LiftZone, SpotFixed: false).Between(earliest, latest)
        : new Lift(told, LiftedOn, LiftZone, SpotFixed: false);

    public LocalDate? LiftToldOn => LiftReportedOn ?? (RemovedBecause?.EndedHold() == true ? RemovedOn : null) ?? LiftedOn;

    /// <param name="appliedAt">On the clock of the client's salon.</param>
    public static BondRow FromBond(
        Bond bond,
        string serial,
        string? clientCode,
        LocalTime? appliedAt,
        UsedAdhesive? adhesive,
        string? stylist
    ) =>
        new()
        {
            Serial = serial,
            ClientCode = clientCode,
            AppliedOn = bond.AppliedOn,
            AppliedAt = appliedAt,
            Adhesive = adhesive?.Product,
            Lot = adhesive?.Lot,
            Coats = adhesive?.Coats,
            Attachment = bond.Attachment,
            WaitsKept = bond.WaitsKept,
            RemovedOn = bond.RemovedOn,
            RemovedBecause = bond.RemovedBecause,
            LiftedOn = bond.Lift?.LiftedOn,
            LiftReportedOn = bond.Lift?.ReportedOn,
            LiftEarliestOn = bond.Lift?.EarliestOn,
            LiftLatestOn = bond.Lift?.LatestOn,
            LiftZone = bond.Lift?.Zone,
            LastSoundOn = bond.LastSoundOn,
            Stylist = stylist,
        };

    /// <summary>This row where it speaks, the book where it is silent.</summary>
    public BondRow MergeWithBook(BondRow book) => Table.MergeWithBook(this, book);

    public IReadOnlyList<string> Cells() => Table.Cells(this);
}

/// <summary>What held the unit, out of everything used for a bond: the sheet has room for one.</summary>
public sealed record UsedAdhesive(string Product, string? Lot, int? Coats)
{
    public static UsedAdhesive? From(Bond bond, IReadOnlyDictionary<Guid, Product> products)
    {
        var held = bond
            .Products.Where(p => products[p.ProductId].Kind is ProductKind.Adhesive or ProductKind.Tape)
            .Concat(bond.Products)
            .FirstOrDefault();
        if (held is null)
            return null;
        var product = products[held.ProductId];
        return new UsedAdhesive(product.Name, product.Lots.FirstOrDefault(l => l.Id == held.LotId)?.Code, held.Coats);
    }
}
