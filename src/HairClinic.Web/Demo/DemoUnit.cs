using HairClinic.Domain.HairSystems;
using HairClinic.Web.Features.Binder.Rows;
using HairClinic.Web.Features.Binder.Sheets.Cells;
using NodaTime;

namespace HairClinic.Web.Demo;

/// <summary>One invented unit on its way from order to worn out.</summary>
public sealed class DemoUnit(string serial, DemoKind kind, LocalDate ordered, LocalDate arrives, int lifeDays)
{
    public LocalDate Arrives => arrives;

    /// <summary>Ready to be bonded.</summary>
    public LocalDate Ready => arrives.PlusDays(3);

    public int WornDays { get; set; }

    public LocalDate? FirstBonded { get; set; }

    public LocalDate? Gone { get; set; }

    public UnitState? End { get; set; }

    public string? Because { get; set; }

    public bool OnHead { get; set; }

    public string Serial => serial;

    public double Worn => (double)WornDays / lifeDays;

    /// <summary>What is known of it today.</summary>
    public UnitRow Row(string clientCode, string salon, LocalDate today, SheetMoney price)
    {
        LocalDate? Until(LocalDate day) => day <= today ? day : null;
        var promised = ordered.PlusDays(56);
        // The workshop says that it will be late a week before it would have come.
        var late = arrives > promised && promised.PlusDays(-7) <= today;
        var dates = new UnitDates
        {
            SpecifiedOn = ordered.PlusDays(-2),
            OrderedOn = ordered,
            AcknowledgedOn = Until(ordered.PlusDays(3)),
            ShippedOn = Until(arrives.PlusDays(-6)),
            ArrivedOn = Until(arrives),
            InspectedOn = Until(arrives.PlusDays(1)),
            AcceptedOn = Until(arrives.PlusDays(1)),
            PreparedOn = Until(Ready),
            FirstBondedOn = FirstBonded,
            RetiredOn = Gone,
        };
        return new UnitRow
        {
            Serial = serial,
            ClientCode = clientCode,
            Workshop = kind.Workshop,
            Base = kind.Base,
            Kind = kind.Name,
            State = StateBy(dates),
            Dates = dates,
            Promises = late ? [promised, promised.PlusDays(14)] : [promised],
            RetiredBecause = Because,
            Place = dates.ArrivedOn is null || OnHead || End == UnitState.ReturnedToClient ? null : salon,
            Price = price,
        };
    }

    private UnitState StateBy(UnitDates dates) =>
        End
        ?? dates switch
        {
            _ when OnHead => UnitState.Bonded,
            { FirstBondedOn: not null } => UnitState.Resting,
            { PreparedOn: not null } => UnitState.Prepared,
            { AcceptedOn: not null } => UnitState.Accepted,
            { ArrivedOn: not null } => UnitState.Arrived,
            { ShippedOn: not null } => UnitState.Shipped,
            { AcknowledgedOn: not null } => UnitState.Acknowledged,
            _ => UnitState.Ordered,
        };
}
