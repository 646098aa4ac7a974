using HairClinic.Web.Features.Binder.Sheets;
using Columns = HairClinic.Web.Features.Binder.Sheets.UnitColumns;

namespace HairClinic.Web.Features.Binder;

/// <summary>What a row of the units sheet says. Null is silence: it never empties what the book knows.</summary>
public sealed record UnitRow
{
    public static SheetSchema<UnitRow> Table { get; } =
        new SheetSchema<UnitRow>()
            .Code(Columns.Serial, r => r.Serial)
            .Code(Columns.ClientCode, r => r.ClientCode)
            .Text(Columns.Workshop, r => r.Workshop)
            .Text(Columns.Base, r => r.Base)
            .Text(Columns.Kind, r => r.Kind)
            .Choice(
                Columns.State,
                r => r.State,
                (own, book) => own.State is null || ChoiceWords.ToWord(own.State) == ChoiceWords.ToWord(book.State) ? book.State : own.State
            )
            .Date(Columns.SpecifiedOn, r => r.Dates.SpecifiedOn)
            .Date(Columns.OrderedOn, r => r.Dates.OrderedOn)
            .Add(
                Columns.PromisedFor,
                r => r.Promises,
                (cells, row, _) => cells.Dates(row, Columns.PromisedFor),
                CellFormatter.Format,
                (own, book) => own.Promises.Count == 0 ? book.Promises : own.Promises
            )
            .Date(Columns.SentBackOn, r => r.Dates.SentBackOn)
            .Date(Columns.AcknowledgedOn, r => r.Dates.AcknowledgedOn)
            .Date(Columns.ShippedOn, r => r.Dates.ShippedOn)
            .Date(Columns.ArrivedOn, r => r.Dates.ArrivedOn)
            .Date(Columns.InspectedOn, r => r.Dates.InspectedOn)
            .Date(Columns.AcceptedOn, r => r.Dates.AcceptedOn)
            .WholeNumber(Columns.TimesRemade, r => r.TimesRemade)
            .Date(Columns.PreparedOn, r => r.Dates.PreparedOn)
            .Date(Columns.FirstBondedOn, r => r.Dates.FirstBondedOn)
            .Date(Columns.RetiredOn, r => r.Dates.RetiredOn)
            .Text(Columns.RetiredBecause, r => r.RetiredBecause)
            .Text(Columns.Place, r => r.Place)
            .Add(Columns.Price, r => r.Price, (cells, row, _) => cells.Money(row, Columns.Price), CellFormatter.Format)
            .AddWithoutProperty(Columns.Currency, (cells, row) => cells.Currency(row, Columns.Currency), r => r.Price?.Currency);

    public string Serial { get; init; } = "";
    public string? ClientCode { get; init; }
    public string? Workshop { get; init; }
    public string? Base { get; init; }
    public string? Kind { get; init; }
    public UnitState? State { get; init; }
    public UnitDates Dates { get; init; } = new();
    public IReadOnlyList<LocalDate> Promises { get; init; } = [];
    public int? TimesRemade { get; init; }
    public string? RetiredBecause { get; init; }
    public string? Place { get; init; }
    public SheetMoney? Price { get; init; }

    /// <param name="unit">With its promises.</param>
    public static UnitRow FromUnit(HairSystem unit, string? clientCode, string? workshop, string? baseName, string? kind, string? place) =>
        new()
        {
            Serial = unit.Serial,
            ClientCode = clientCode,
            Workshop = workshop,
            Base = baseName,
            Kind = kind,
            State = unit.State,
            Dates = unit.Dates,
            Promises = [.. unit.Promises.OrderBy(p => p.Number).Select(p => p.PromisedFor)],
            TimesRemade = unit.RemadeTimes,
            RetiredBecause = unit.RetiredBecause,
            Place = place,
            Price = unit is { PriceMinor: { } minor, Currency: { } currency } ? new SheetMoney(minor, currency) : null,
        };

    /// <summary>This row where it speaks, the book where it is silent.</summary>
    public UnitRow MergeWithBook(UnitRow book) => Table.MergeWithBook(this, book);

    public IReadOnlyList<string> Cells() => Table.Cells(this);
}
