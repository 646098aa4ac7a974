using System.Numerics;
using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.LoadAhead;

/// <summary>A salon's weeks ahead.</summary>
public sealed class SalonLoad : ScenarioSums<WeekLoad>
{
    public SalonLoad(int weeks)
        : base(weeks) { }

    public SalonLoad(IReadOnlyList<IReadOnlyList<WeekLoad>> scenarios)
        : base(scenarios) { }

    public int Weeks => Periods;

    /// <summary>The week's means; its variances include the clients' own chance and the uncertainty about what they share.</summary>
    public WeekLoad Week(int week)
    {
        var chair = PracticeEffectNode.MixtureMoments(s => (this[s, week].ChairMinutes, this[s, week].ChairVariance));
        var hands = PracticeEffectNode.MixtureMoments(s => (this[s, week].HandsOnMinutes, this[s, week].HandsOnVariance));
        return new(
            Mean(load => load.Rebonds),
            Mean(load => load.Washes),
            Mean(load => load.Fittings),
            chair.Mean,
            hands.Mean,
            chair.Variance,
            hands.Variance
        );

        double Mean(Func<WeekLoad, double> count) => PracticeEffectNode.MixtureMoments(s => (count(this[s, week]), 0)).Mean;
    }

    /// <summary>The 80 % interval of chair-minutes.</summary>
    public (double From, double To) ChairBand(int week) =>
        PracticeEffectNode.EightyPercentInterval(Week(week).ChairMinutes, Week(week).ChairVariance);

    /// <summary>As <see cref="ChairBand"/>, of a stylist's minutes.</summary>
    public (double From, double To) HandsOnBand(int week) =>
        PracticeEffectNode.EightyPercentInterval(Week(week).HandsOnMinutes, Week(week).HandsOnVariance);

    /// <summary>The first week whose expected minutes are more than there is; null where all fit.</summary>
    /// <param name="chair">Chair-minutes of each week's opening hours.</param>
    /// <param name="handsOn">Stylists' minutes of each week.</param>
    public int? FirstThatDoesNotFit(ReadOnlySpan<double> chair, ReadOnlySpan<double> handsOn)
    {
        for (var week = 0; week < Weeks; week++)
        {
            if (Week(week).ChairMinutes > chair[week] || Week(week).HandsOnMinutes > handsOn[week])
                return week;
        }
        return null;
    }
}

/// <summary>One value of what all clients share (δ of the fit) and its weight.</summary>
/// <param name="Shift">In standard deviations of δ.</param>
public readonly record struct PracticeEffectNode(double Shift, double Share)
{
    /// <summary>Gauss's rule of three for a normal: exact where the load bends gently with δ.</summary>
    public static readonly IReadOnlyList<PracticeEffectNode> Three =
    [
        new(-1.7320508075688772, 1 / 6.0),
        new(0, 2 / 3.0),
        new(1.7320508075688772, 1 / 6.0),
    ];

    /// <summary>The mean over the scenarios; the variance holds the clients' own chance and how far the scenarios lie apart.</summary>
    /// <param name="counts">One a scenario.</param>
    internal static (double Mean, double Variance) MixtureMoments(Func<int, (double Mean, double Variance)> counts)
    {
        var (mean, variance) = (0.0, 0.0);
        for (var scenario = 0; scenario < Three.Count; scenario++)
        {
            mean += Three[scenario].Share * counts(scenario).Mean;
            variance += Three[scenario].Share * counts(scenario).Variance;
        }
        for (var scenario = 0; scenario < Three.Count; scenario++)
            variance += Three[scenario].Share * Math.Pow(counts(scenario).Mean - mean, 2);
        return (mean, variance);
    }

    /// <summary>The 80 % interval; never below 0.</summary>
    internal static (double From, double To) EightyPercentInterval(double mean, double variance) =>
        (Math.Max(0, mean - ZScores.EightyPercent * Math.Sqrt(variance)), mean + ZScores.EightyPercent * Math.Sqrt(variance));
}

/// <summary>What is expected of one week. Means add up exactly over clients and salons; so do variances of what is not shared.</summary>
public readonly record struct WeekLoad(
    double Rebonds,
    double Washes,
    double Fittings,
    double ChairMinutes,
    double HandsOnMinutes,
    double ChairVariance,
    double HandsOnVariance
) : IAdditionOperators<WeekLoad, WeekLoad, WeekLoad>
{
    public static WeekLoad operator +(WeekLoad one, WeekLoad other) =>
        new(
            one.Rebonds + other.Rebonds,
            one.Washes + other.Washes,
            one.Fittings + other.Fittings,
            one.ChairMinutes + other.ChairMinutes,
            one.HandsOnMinutes + other.HandsOnMinutes,
            one.ChairVariance + other.ChairVariance,
            one.HandsOnVariance + other.HandsOnVariance
        );

    /// <summary>Mean and variance of so many visits of a kind.</summary>
    public static WeekLoad FromCounts(CountMoments rebonds, CountMoments washes, CountMoments fittings, VisitTypeMinutes each) =>
        new(
            rebonds.Mean,
            washes.Mean,
            fittings.Mean,
            rebonds.Mean * each.Rebond.Chair + washes.Mean * each.Wash.Chair + fittings.Mean * each.Fitting.Chair,
            rebonds.Mean * each.Rebond.HandsOn + washes.Mean * each.Wash.HandsOn + fittings.Mean * each.Fitting.HandsOn,
            Square(each.Rebond.Chair) * rebonds.Variance
                + Square(each.Wash.Chair) * washes.Variance
                + Square(each.Fitting.Chair) * fittings.Variance,
            Square(each.Rebond.HandsOn) * rebonds.Variance
                + Square(each.Wash.HandsOn) * washes.Variance
                + Square(each.Fitting.HandsOn) * fittings.Variance
        );

    private static double Square(double value) => value * value;
}

/// <summary>A salon's weeks ahead as they were calculated last: one row a salon, replaced each night.</summary>
public sealed class LoadForecast : PracticeOwned
{
    private LoadForecast() { }

    public LoadForecast(Guid id, Guid salonId) => (Id, SalonId) = (id, salonId);

    public Guid SalonId { get; private set; }

    /// <summary>The first day of the first week.</summary>
    public LocalDate From { get; private set; }

    public int Clients { get; private set; }

    /// <summary>Scenario by scenario and week by week; see <see cref="SalonLoad"/>.</summary>
    public IReadOnlyList<IReadOnlyList<WeekLoad>> Scenarios { get; private set; } = [];

    public void Store(LocalDate from, int clients, SalonLoad load)
    {
        (From, Clients) = (from, clients);
        Scenarios = load.SumsByScenario();
    }

    public SalonLoad ToSalonLoad() => new(Scenarios);
}
