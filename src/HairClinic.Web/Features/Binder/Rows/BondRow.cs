using HairClinic.Domain.Bonding;
using HairClinic.Web.Features.Binder.Sheets;
using NodaTime;
using Columns = HairClinic.Web.Features.Binder.Sheets.BondColumns;

namespace HairClinic.Web.Features.Binder;

/// <summary>What a row of the bonds sheet says. Null is silence: it never empties what the book knows.</summary>
public sealed record BondRow
{
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
    public LiftZone? LiftZone { get; init; }
    public LocalDate? LastSoundOn { get; init; }
    public string? Stylist { get; init; }

    /// <summary>How the bond came to an end, as far as it is told; a removal for a lift without a day leaves the day unknown.</summary>
    public Lift? Lift =>
        (LiftReportedOn ?? (RemovedBecause == RemovalReason.Lifted ? RemovedOn : null) ?? LiftedOn) is { } told
            ? new Lift(told, LiftedOn, LiftZone, SpotFixed: false)
            : null;

    public static BondRow Read(CellReader cells, SheetRow row) =>
        new()
        {
            Serial = cells.Code(row, Columns.Serial) ?? "",
            ClientCode = cells.Code(row, Columns.ClientCode),
            AppliedOn = cells.Date(row, Columns.AppliedOn),
            AppliedAt = cells.Time(row, Columns.AppliedAt),
            Adhesive = cells.Text(row, Columns.Adhesive),
            Lot = cells.Code(row, Columns.Lot),
            Coats = cells.WholeNumber(row, Columns.Coats),
            Attachment = ChoiceWords.Read<Attachment>(cells.Choice(row, Columns.Attachment)),
            WaitsKept = cells.YesNo(row, Columns.WaitsKept),
            RemovedOn = cells.Date(row, Columns.RemovedOn),
            RemovedBecause = ChoiceWords.Read<RemovalReason>(cells.Choice(row, Columns.RemovedBecause)),
            LiftedOn = cells.Date(row, Columns.LiftedOn),
            LiftReportedOn = cells.Date(row, Columns.LiftReportedOn),
            LiftZone = ChoiceWords.Read<LiftZone>(cells.Choice(row, Columns.LiftZone)),
            LastSoundOn = cells.Date(row, Columns.LastSoundOn),
            Stylist = cells.Text(row, Columns.Stylist),
        };

    /// <param name="appliedAt">On the clock of the client's salon.</param>
    public static BondRow Of(Bond bond, string serial, string? clientCode, LocalTime? appliedAt, UsedAdhesive? adhesive, string? stylist) =>
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
            LiftZone = bond.Lift?.Zone,
            LastSoundOn = bond.LastSoundOn,
            Stylist = stylist,
        };

    /// <summary>This row where it speaks, the book where it is silent.</summary>
    public BondRow Over(BondRow book) =>
        new()
        {
            Serial = Serial,
            ClientCode = ClientCode ?? book.ClientCode,
            AppliedOn = AppliedOn ?? book.AppliedOn,
            AppliedAt = AppliedAt ?? book.AppliedAt,
            Adhesive = Adhesive ?? book.Adhesive,
            Lot = Lot ?? book.Lot,
            Coats = Coats ?? book.Coats,
            Attachment = Attachment ?? book.Attachment,
            WaitsKept = WaitsKept ?? book.WaitsKept,
            RemovedOn = RemovedOn ?? book.RemovedOn,
            RemovedBecause = RemovedBecause ?? book.RemovedBecause,
            LiftedOn = LiftedOn ?? book.LiftedOn,
            LiftReportedOn = LiftReportedOn ?? book.LiftReportedOn,
            LiftZone = LiftZone ?? book.LiftZone,
            // Later word of a sound bond stands.
            LastSoundOn = LastSoundOn is { } seen && !(book.LastSoundOn > seen) ? seen : book.LastSoundOn,
            Stylist = Stylist ?? book.Stylist,
        };

    public IReadOnlyList<string> Cells() =>
        [
            Serial,
            CellText.Of(ClientCode),
            CellText.Of(AppliedOn),
            CellText.Of(AppliedAt),
            CellText.Of(Adhesive),
            CellText.Of(Lot),
            CellText.Of(Coats),
            CellText.Of(ChoiceWords.Of(Attachment)),
            CellText.Of(WaitsKept),
            CellText.Of(RemovedOn),
            CellText.Of(ChoiceWords.Of(RemovedBecause)),
            CellText.Of(LiftedOn),
            CellText.Of(LiftReportedOn),
            CellText.Of(ChoiceWords.Of(LiftZone)),
            CellText.Of(LastSoundOn),
            CellText.Of(Stylist),
        ];
}
