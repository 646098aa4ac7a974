namespace HairClinic.Domain.HairSystems;

/// <summary>The day of each step of a unit's life, as far as it got. An old book may lack some.</summary>
public sealed record UnitDates
{
    public LocalDate? SpecifiedOn { get; init; }
    public LocalDate? OrderedOn { get; init; }

    /// <summary>The day it was last sent back to be made again; the days of its first way are told by its arrivals.</summary>
    public LocalDate? SentBackOn { get; init; }

    public LocalDate? AcknowledgedOn { get; init; }
    public LocalDate? ShippedOn { get; init; }
    public LocalDate? ArrivedOn { get; init; }
    public LocalDate? InspectedOn { get; init; }
    public LocalDate? AcceptedOn { get; init; }
    public LocalDate? PreparedOn { get; init; }
    public LocalDate? FirstBondedOn { get; init; }

    /// <summary>The day it left service, whatever the reason.</summary>
    public LocalDate? RetiredOn { get; init; }

    /// <summary>By which units of a client stand one after another: the day it was ordered, or what is known instead.</summary>
    public LocalDate? OrderedOrFirstKnownOn() => OrderedOn ?? SpecifiedOn ?? ArrivedOn ?? FirstBondedOn;

    /// <summary>The first day on which anybody knew of it; null where no step is dated.</summary>
    public LocalDate? FirstKnownOn() =>
        new[]
        {
            SpecifiedOn,
            OrderedOn,
            SentBackOn,
            AcknowledgedOn,
            ShippedOn,
            ArrivedOn,
            InspectedOn,
            AcceptedOn,
            PreparedOn,
            FirstBondedOn,
            RetiredOn,
        }.Min();

    /// <summary>The steps up to and with a day.</summary>
    public UnitDates Until(LocalDate day)
    {
        return new()
        {
            SpecifiedOn = By(SpecifiedOn),
            OrderedOn = By(OrderedOn),
            SentBackOn = By(SentBackOn),
            AcknowledgedOn = By(AcknowledgedOn),
            ShippedOn = By(ShippedOn),
            ArrivedOn = By(ArrivedOn),
            InspectedOn = By(InspectedOn),
            AcceptedOn = By(AcceptedOn),
            PreparedOn = By(PreparedOn),
            FirstBondedOn = By(FirstBondedOn),
            RetiredOn = By(RetiredOn),
        };

        LocalDate? By(LocalDate? on) => on <= day ? on : null;
    }

    /// <summary>The last step that is dated; whether it is on a head or how it left service, dates do not say.</summary>
    public UnitState LastDatedState() =>
        this switch
        {
            { RetiredOn: not null } => UnitState.Retired,
            { FirstBondedOn: not null } => UnitState.Resting,
            { PreparedOn: not null } => UnitState.Prepared,
            { AcceptedOn: not null } => UnitState.Accepted,
            { InspectedOn: not null } => UnitState.Inspected,
            { ArrivedOn: not null } => UnitState.Arrived,
            { ShippedOn: not null } => UnitState.Shipped,
            { AcknowledgedOn: not null } => UnitState.Acknowledged,
            { OrderedOn: not null } => UnitState.Ordered,
            _ => UnitState.Specified,
        };

    /// <summary>The first step that is dated before the one it follows, if any: (earlier step, later step).</summary>
    public (string Earlier, string Later)? FirstDisorder()
    {
        (string Name, LocalDate? Day)[] steps =
        [
            ("ordered", OrderedOn),
            ("sent back", SentBackOn),
            ("acknowledged", AcknowledgedOn),
            ("shipped", ShippedOn),
            ("arrived", ArrivedOn),
            ("inspected", InspectedOn),
            ("accepted", AcceptedOn),
            ("prepared", PreparedOn),
            ("first bonded", FirstBondedOn),
            ("retired", RetiredOn),
        ];
        var dated = steps.Where(s => s.Day is not null).ToList();
        for (var i = 1; i < dated.Count; i++)
        {
            if (dated[i].Day < dated[i - 1].Day)
                return (dated[i - 1].Name, dated[i].Name);
        }
        return null;
    }
}
