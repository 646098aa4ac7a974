using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Wear;

/// <summary>Everything the wear line draws, already computed: days in, picture out.</summary>
/// <param name="From">First day drawn.</param>
/// <param name="To">Last day drawn.</param>
/// <param name="Today">The salon's day.</param>
/// <param name="Lanes">One per unit, oldest first.</param>
/// <param name="Visits">Past visits and booked ones.</param>
/// <param name="Gap">Days that are coming with no unit that still wears well, if nothing is done.</param>
public sealed record WearLineData(
    LocalDate From,
    LocalDate To,
    LocalDate Today,
    IReadOnlyList<WearLineUnit> Lanes,
    IReadOnlyList<WearLineVisit> Visits,
    WearLineGap? Gap = null
)
{
    /// <summary>What the predicted ends stand on, where the newest recalculation found no answer.</summary>
    public ModelBasis? Basis { get; init; }

    /// <summary>The lane on the head today, if any.</summary>
    public WearLineUnit? Worn => Lanes.FirstOrDefault(lane => lane.Open is not null);
}

/// <summary>The 10 % and the 90 % day of a predicted end.</summary>
public sealed record PredictedEndRange(LocalDate Early, LocalDate Late);

/// <summary>One spell on the head, with the window in which its rebond falls due.</summary>
public sealed record WearLineBond(
    LocalDate AppliedOn,
    LocalDate Opens,
    LocalDate DueOn,
    LocalDate Closes,
    LocalDate? RemovedOn = null,
    LocalDate? LiftedOn = null
);

/// <summary>A point of the fading bar: the chance, 0 to 1, that the unit still wears on this day.</summary>
public sealed record WearSurvivalPoint(LocalDate On, double Survival);

/// <summary>From the day the last unit is worn out up to, and not including, the day the next can be worn.</summary>
/// <param name="WithoutHair">Nothing is on the head and nothing in house: those are days without hair, where else worn-out hair is on.</param>
public sealed record WearLineGap(LocalDate From, LocalDate Until, bool WithoutHair = false)
{
    public int Days => Period.DaysBetween(From, Until);
}

/// <summary>One unit's life. Dotted from ordered, solid from arrived, ended by retired; predictions are there once there is a model to make them.</summary>
public sealed record WearLineUnit(string Serial, string Kind)
{
    public LocalDate? Ordered { get; init; }
    public LocalDate? Arrived { get; init; }
    public LocalDate? Retired { get; init; }

    /// <summary>Likely arrival, earliest and latest; a single promised day has both alike.</summary>
    public LocalDate? PromisedFrom { get; init; }
    public LocalDate? PromisedTo { get; init; }
    public IReadOnlyList<WearLineBond> Bonds { get; init; } = [];

    /// <summary>The chance that the unit still wears on a day, from today on; first point 1, never rising.</summary>
    public IReadOnlyList<WearSurvivalPoint> Fade { get; init; } = [];

    /// <summary>The days between which four ends in five will fall.</summary>
    public PredictedEndRange? Band { get; init; }
    public LocalDate? ReorderBy { get; init; }

    /// <summary>The bond that holds today.</summary>
    public WearLineBond? Open => Bonds.FirstOrDefault(bond => bond.RemovedOn is null);
}

/// <summary>A visit as a tick on the line; the label is for whoever points at it or listens.</summary>
public sealed record WearLineVisit(LocalDate On, string Label);
