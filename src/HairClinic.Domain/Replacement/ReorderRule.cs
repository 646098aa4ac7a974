using HairClinic.Domain.Wear;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Replacement;

/// <summary>When a client's next unit must be ordered so that they are never without hair.</summary>
/// <remarks>
/// Each civil day uses one worn day of exactly one unit, so what is in house lasts the sum of the remaining lives, whichever
/// is worn. The lives of one client share that client's effect: they are summed within each node of it. Keep one rule a
/// thread for a batch: it works in its own arrays and allocates nothing for a client.
/// </remarks>
/// <param name="daysInSight">The farthest day, from today, on which hair may last or a unit be ready.</param>
public sealed class ReorderRule(int daysInSight = 1024)
{
    private readonly double[] _ended = new double[daysInSight];
    private readonly double[] _atReady = new double[daysInSight];
    private readonly double[] _without = new double[daysInSight];
    private readonly double[] _byArrival = new double[daysInSight];
    private readonly TotalHairLife _hair = new(daysInSight);
    private (IReadOnlyList<RemainingLife> InHand, ClientEffectNodes Client, double[] Shares)? _weighed;

    public ReorderAnswer Answer(ReorderInput question)
    {
        Look(question, extra: 0);
        var today = GapChanceIfOrderedIn(question, 0);
        var (low, high) = (0, daysInSight / 2);
        if (today > question.Alpha)
            return new(today, null, Expected(question), false);
        if (GapChanceIfOrderedIn(question, high) <= question.Alpha)
            return new(today, high, Expected(question), true);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = GapChanceIfOrderedIn(question, middle) <= question.Alpha ? (middle, high) : (low, middle);
        }
        return new(today, low, Expected(question), false);
    }

    /// <summary>P(gap) for an order placed on each of the next days: what the client's page draws.</summary>
    public void GapByOrderDay(ReorderInput question, Span<double> days)
    {
        Look(question, extra: 0);
        for (var day = 0; day < days.Length; day++)
            days[day] = GapChanceIfOrderedIn(question, day);
    }

    /// <summary>
    /// The chance of a gap before the k-th order in flight is ready (k from 1). No new order can lower it: it is shown apart,
    /// with its remedies. Orders are taken to become ready in the order given.
    /// </summary>
    public double GapChanceBeforeOrderInFlight(ReorderInput question, int k)
    {
        var (kept, shares) = (0.0, SharesOf(question));
        for (var node = 0; node < shares.Length; node++)
            kept += shares[node] * _hair.ChanceLastsUntilOrderReady(question, question.Client.Nodes[node], k);
        return Math.Clamp(1 - kept, 0, 1);
    }

    /// <summary>The first day, from today, by which all hair is worn out with at least such a chance; null past what is in sight.</summary>
    public void HairEndQuantiles(ReorderInput question, ReadOnlySpan<double> chances, Span<int?> days)
    {
        Look(question, extra: 0);
        for (var i = 0; i < chances.Length; i++)
        {
            days[i] = null;
            for (var day = 0; day < _ended.Length && days[i] is null; day++)
            {
                if (_ended[day] >= chances[i])
                    days[i] = day;
            }
        }
    }

    /// <summary>The fewest new units so that what there is and they outlast the next order; null where none up to the most would do.</summary>
    /// <param name="each">A new unit's life.</param>
    public int? Quantity(ReorderInput question, RemainingLife each, int most = 12)
    {
        for (var count = 0; count <= most; count++)
        {
            Look(question, count, each);
            if (GapChanceIfOrderedIn(question, 0) <= question.Alpha)
                return count;
        }
        return null;
    }

    /// <summary>The last day to order on, moved to a working day before it; null where today is too late already.</summary>
    /// <returns>Today where no working day lies between.</returns>
    public static LocalDate? LastOrderDay(LocalDate today, ReorderAnswer answer, OpeningDays working)
    {
        if (answer.ReorderInDays is not { } days)
            return null;
        while (days > 0 && !working.IsOpen(today.PlusDays(days)))
            days--;
        return today.PlusDays(days);
    }

    // How likely each value of the client's effect is, with what the grades of the units in house tell of it. Of one client it is asked often.
    private double[] SharesOf(ReorderInput question)
    {
        if (question.InHand.All(unit => unit.Grades is null))
            return question.Client.Shares;
        if (_weighed is { } known && ReferenceEquals(known.InHand, question.InHand) && ReferenceEquals(known.Client, question.Client))
            return known.Shares;
        var shares = question.Client.Nodes.Select((node, k) => question.Client.Shares[k] * _hair.GradeLikelihood(question, node)).ToArray();
        var whole = shares.Sum();
        shares = Array.ConvertAll(shares, share => share / whole);
        _weighed = (question.InHand, question.Client, shares);
        return shares;
    }

    // Tables for this client: the chance that all hair is gone before each day, then before a unit is ready that arrives
    // after so many working days.
    private void Look(ReorderInput question, int extra, RemainingLife each = default)
    {
        Array.Clear(_ended);
        var shares = SharesOf(question);
        for (var node = 0; node < shares.Length; node++)
            _hair.AddCumulativeTo(question, question.Client.Nodes[node], shares[node], extra, each, _ended);
        PreparationTime.ByArrivalDay(question.Preparation, question.PreparationDays, _ended, EndedInSight, _byArrival);
        for (var working = 0; working < _atReady.Length; working++)
        {
            var arrives = question.Workshop.CalendarDayAfter(working);
            _atReady[working] = arrives < _ended.Length ? _byArrival[arrives] : EndedInSight;
        }
    }

    private double GapChanceIfOrderedIn(ReorderInput question, int days)
    {
        var start = question.Workshop.CountUntil(days);
        var mass = question.Lead.Mass;
        var seen = Math.Min(mass.Length, _atReady.Length - start);
        var gap = VectorSums.Dot(mass.AsSpan(0, seen), _atReady.AsSpan(start, seen)) + question.Lead.Never * EndedInSight;
        for (var day = seen; day < mass.Length; day++)
            gap += mass[day] * EndedInSight;
        return Math.Clamp(gap, 0, 1);
    }

    // The chance that all hair is gone at the end of sight. Of an order that comes later still no more is known; were it a gap for certain,
    // a workshop that may take for ever would have more and more ordered, however much there is.
    private double EndedInSight => _ended[^1];

    // Each arrival day leaves the days between the last hair and it; summed up once, then weighed by the lead time.
    private double Expected(ReorderInput question)
    {
        var horizon = Math.Min(question.HorizonDays, _without.Length - 1);
        _without[0] = 0;
        for (var day = 1; day <= horizon; day++)
            _without[day] = _without[day - 1] + (_ended[day - 1] + _ended[day]) / 2;
        var most = _without[horizon];
        var within = _without.AsSpan(0, horizon + 1);
        PreparationTime.ByArrivalDay(question.Preparation, question.PreparationDays, within, most, _byArrival);
        var sum = question.Lead.Never * most;
        for (var working = 0; working < question.Lead.Mass.Length; working++)
        {
            var arrives = question.Workshop.CalendarDayAfter(working);
            sum += question.Lead.Mass[working] * (arrives <= horizon ? _byArrival[arrives] : most);
        }
        return sum;
    }
}

/// <summary>When the next unit must be ordered, and what it means to order now.</summary>
/// <param name="GapIfOrderedToday">The chance that all hair in house and in flight is worn out before a unit ordered today is ready.</param>
/// <param name="ReorderInDays">The most whole days the order can wait; null where today is too late already.</param>
/// <param name="ExpectedDaysWithoutHair">Within the horizon, if ordered today.</param>
/// <param name="IsPastSight">The order can wait at least so long: farther was not looked.</param>
public readonly record struct ReorderAnswer(double GapIfOrderedToday, int? ReorderInDays, double ExpectedDaysWithoutHair, bool IsPastSight);

/// <summary>Everything the next order of one client depends on.</summary>
/// <param name="Distribution">Of lives.</param>
/// <param name="Client">The distribution of this client's δ + b, from rows that include the ages of the units in hand; few nodes (<see cref="ClientEffectNodes.Reduced"/>) are fast.</param>
/// <param name="InHand">Bondable units in house.</param>
/// <param name="InFlight">Orders under way, the soonest expected first.</param>
/// <param name="Lead">Λ* of a new order.</param>
/// <param name="Workshop">The days on which its workshop works.</param>
/// <param name="PreparationDays">From arrival until it can be bonded: inspection, colour, cut-in, waiting for a chair. A fixed number.</param>
public sealed record ReorderInput(
    LifeDistribution Distribution,
    ClientEffectNodes Client,
    IReadOnlyList<RemainingLife> InHand,
    IReadOnlyList<UnitOnOrder> InFlight,
    LeadTimeTable Lead,
    WorkshopWorkingDays Workshop,
    int PreparationDays
)
{
    /// <summary>Preparation as it was learnt, in place of the fixed number; null where that stands.</summary>
    public PreparationTime? Preparation { get; init; }

    /// <summary>The chance of a gap that is accepted.</summary>
    public double Alpha { get; init; } = 0.05;

    /// <summary>Units always to be ready beside the one worn (<see cref="SpareRule"/>).</summary>
    public int Spares { get; init; }

    /// <summary>Of those in hand, how many are only lent to the client.</summary>
    public int Lent { get; init; }

    /// <summary>Days within which days of a gap are counted.</summary>
    public int HorizonDays { get; init; } = 365;
}
