using HairClinic.Domain.HairSystems;
using HairClinic.Web.Features.Binder.Sheets;
using NodaTime;
using Columns = HairClinic.Web.Features.Binder.Sheets.UnitColumns;

namespace HairClinic.Web.Features.Binder;

/// <summary>What a row of the units sheet says. Null is silence: it never empties what the book knows.</summary>
public sealed record UnitRow
{
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

    public static UnitRow Read(CellReader cells, SheetRow row)
    {
        _ = cells.Currency(row, Columns.Currency);
        return new()
        {
            Serial = cells.Code(row, Columns.Serial) ?? "",
            ClientCode = cells.Code(row, Columns.ClientCode),
            Workshop = cells.Text(row, Columns.Workshop),
            Base = cells.Text(row, Columns.Base),
            Kind = cells.Text(row, Columns.Kind),
            State = ChoiceWords.Read<UnitState>(cells.Choice(row, Columns.State)),
            Dates = new()
            {
                SpecifiedOn = cells.Date(row, Columns.SpecifiedOn),
                OrderedOn = cells.Date(row, Columns.OrderedOn),
                AcknowledgedOn = cells.Date(row, Columns.AcknowledgedOn),
                ShippedOn = cells.Date(row, Columns.ShippedOn),
                ArrivedOn = cells.Date(row, Columns.ArrivedOn),
                InspectedOn = cells.Date(row, Columns.InspectedOn),
                AcceptedOn = cells.Date(row, Columns.AcceptedOn),
                PreparedOn = cells.Date(row, Columns.PreparedOn),
                FirstBondedOn = cells.Date(row, Columns.FirstBondedOn),
                RetiredOn = cells.Date(row, Columns.RetiredOn),
            },
            Promises = cells.Dates(row, Columns.PromisedFor),
            TimesRemade = cells.WholeNumber(row, Columns.TimesRemade),
            RetiredBecause = cells.Text(row, Columns.RetiredBecause),
            Place = cells.Text(row, Columns.Place),
            Price = cells.Money(row, Columns.Price),
        };
    }

    /// <param name="unit">With its promises.</param>
    public static UnitRow Of(HairSystem unit, string? clientCode, string? workshop, string? baseName, string? kind, string? place) =>
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
    public UnitRow Over(UnitRow book) =>
        new()
        {
            Serial = Serial,
            ClientCode = ClientCode ?? book.ClientCode,
            Workshop = Workshop ?? book.Workshop,
            Base = Base ?? book.Base,
            Kind = Kind ?? book.Kind,
            State = State is null || ChoiceWords.Of(State) == ChoiceWords.Of(book.State) ? book.State : State,
            Dates = new()
            {
                SpecifiedOn = Dates.SpecifiedOn ?? book.Dates.SpecifiedOn,
                OrderedOn = Dates.OrderedOn ?? book.Dates.OrderedOn,
                AcknowledgedOn = Dates.AcknowledgedOn ?? book.Dates.AcknowledgedOn,
                ShippedOn = Dates.ShippedOn ?? book.Dates.ShippedOn,
                ArrivedOn = Dates.ArrivedOn ?? book.Dates.ArrivedOn,
                InspectedOn = Dates.InspectedOn ?? book.Dates.InspectedOn,
                AcceptedOn = Dates.AcceptedOn ?? book.Dates.AcceptedOn,
                PreparedOn = Dates.PreparedOn ?? book.Dates.PreparedOn,
                FirstBondedOn = Dates.FirstBondedOn ?? book.Dates.FirstBondedOn,
                RetiredOn = Dates.RetiredOn ?? book.Dates.RetiredOn,
            },
            Promises = Promises.Count == 0 ? book.Promises : Promises,
            TimesRemade = TimesRemade ?? book.TimesRemade,
            RetiredBecause = RetiredBecause ?? book.RetiredBecause,
            Place = Place ?? book.Place,
            Price = Price ?? book.Price,
        };

    public IReadOnlyList<string> Cells() =>
        [
            Serial,
            CellText.Of(ClientCode),
            CellText.Of(Workshop),
            CellText.Of(Base),
            CellText.Of(Kind),
            CellText.Of(ChoiceWords.Of(State)),
            CellText.Of(Dates.SpecifiedOn),
            CellText.Of(Dates.OrderedOn),
            CellText.Of(Promises),
            CellText.Of(Dates.AcknowledgedOn),
            CellText.Of(Dates.ShippedOn),
            CellText.Of(Dates.ArrivedOn),
            CellText.Of(Dates.InspectedOn),
            CellText.Of(Dates.AcceptedOn),
            CellText.Of(TimesRemade),
            CellText.Of(Dates.PreparedOn),
            CellText.Of(Dates.FirstBondedOn),
            CellText.Of(Dates.RetiredOn),
            CellText.Of(RetiredBecause),
            CellText.Of(Place),
            CellText.Of(Price),
            CellText.Of(Price?.Currency),
        ];
}
