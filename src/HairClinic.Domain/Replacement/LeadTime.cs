using HairClinic.Domain.Wear.Lifetimes;
using MathNet.Numerics.Distributions;

namespace HairClinic.Domain.Replacement;

/// <summary>How long an order takes from the day it is placed until it arrives, in days on which the workshop works.</summary>
/// <remarks>
/// ln Λ is normal with unknown mean and variance; the practice's row weighs like four orders in both (its four degrees of
/// freedom). Arrived orders update it in closed form: a log-Student-t. Orders in flight say "longer than so far": then it
/// is a mixture over a grid of means and variances, each weighted by how likely it leaves them still under way.
/// </remarks>
public sealed class LeadTime
{
    /// <summary>Working days that tables look ahead.</summary>
    public const int Days = 730;

    // Of which the exponential is below what a double tells beside 1.
    private const double Nothing = 40;

    private const double PriorOrders = 4;
    private readonly LeadTimeMixtureComponent[] _nodes;
    private readonly double _centre;
    private readonly double _scale;
    private readonly double _freedom;
    private double[]? _mass;

    private LeadTime(double centre, double scale, double freedom, LeadTimeMixtureComponent[] nodes, int arrived, int inFlight)
    {
        (_centre, _scale, _freedom, _nodes) = (centre, scale, freedom, nodes);
        (Arrived, InFlight) = (arrived, inFlight);
    }

    /// <summary>The chance of each whole working day, for an order placed today; what lies beyond them is missing.</summary>
    internal double[] MassByDay(int length) => _mass?.Length == length ? _mass : _mass = LeadTimeTable.MassFromSurvival(Survival, length);

    /// <summary>All that it is as a row keeps it, its days among it: they take longest.</summary>
    internal double[] ToStoredValues(LeadTimePrior prior) =>
        [
            prior.Centre,
            prior.Scale,
            _centre,
            _scale,
            _freedom,
            Arrived,
            InFlight,
            .. MassByDay(Days),
            .. _nodes.SelectMany(n => new[] { n.Mean, n.Spread, n.Share }),
        ];

    /// <returns>Null where nothing is kept, or another row of the practice's was behind it.</returns>
    internal static LeadTime? FromStoredValues(LeadTimePrior prior, double[] kept)
    {
        const int Head = 7;
        if (kept.Length < Head + Days || kept[0] != prior.Centre || kept[1] != prior.Scale)
            return null;
        var nodes = new LeadTimeMixtureComponent[(kept.Length - Head - Days) / 3];
        for (var (i, at) = (0, Head + Days); i < nodes.Length; (i, at) = (i + 1, at + 3))
            nodes[i] = new LeadTimeMixtureComponent(kept[at], kept[at + 1], kept[at + 2]);
        return new LeadTime(kept[2], kept[3], kept[4], nodes, (int)kept[5], (int)kept[6]) { _mass = kept[Head..(Head + Days)] };
    }

    /// <summary>Orders behind it, besides the practice's row.</summary>
    public int Arrived { get; }

    public int InFlight { get; }

    /// <param name="arrivedDays">Working days each arrived order took; 0 counts as half a day.</param>
    /// <param name="waits">Working days each order in flight has waited until today.</param>
    public static LeadTime Learn(LeadTimePrior prior, ReadOnlySpan<double> arrivedDays, ReadOnlySpan<double> waits)
    {
        var (n, sum, squares) = (arrivedDays.Length, 0.0, 0.0);
        foreach (var days in arrivedDays)
            sum += Math.Log(CountedDays(days));
        var mean = n == 0 ? 0 : sum / n;
        foreach (var days in arrivedDays)
            squares += Math.Pow(Math.Log(CountedDays(days)) - mean, 2);
        var weight = PriorOrders + n;
        var freedom = LeadTimePrior.DegreesOfFreedom + n;
        var centre = (PriorOrders * prior.Centre + n * mean) / weight;
        // The predictive scale holds the doubt about the mean too; the variance alone is smaller by that share.
        var variance = prior.Scale * prior.Scale * PriorOrders / (PriorOrders + 1);
        squares += LeadTimePrior.DegreesOfFreedom * variance + PriorOrders * n / weight * Math.Pow(mean - prior.Centre, 2);
        variance = squares / freedom;
        var nodes = waits.IsEmpty ? [] : LeadTimeMixtureComponent.Posterior(centre, weight, variance, freedom, waits);
        return new LeadTime(centre, Math.Sqrt(variance * (1 + 1 / weight)), freedom, nodes, n, waits.Length);
    }

    /// <summary>The logarithm of the density of the logarithms of arrived orders' days, mean and variance integrated out; what only their number bears on is left away.</summary>
    /// <param name="sum">Of ln Λ less the prior's centre.</param>
    /// <param name="squares">Of the same, squared.</param>
    internal static double LogMarginal(LeadTimePrior prior, double count, double sum, double squares)
    {
        var variance = prior.Scale * prior.Scale * PriorOrders / (PriorOrders + 1);
        var about = LeadTimePrior.DegreesOfFreedom * variance + squares - sum * sum / (PriorOrders + count);
        return -(LeadTimePrior.DegreesOfFreedom + count) / 2 * Math.Log(about);
    }

    /// <summary>What arrived on the day it was ordered took half a day.</summary>
    internal static double CountedDays(double days) => Math.Max(0.5, days);

    /// <summary>How far ln Λ lies from the middle of what is believed.</summary>
    internal double Distance(double log) => Math.Abs(log - _centre);

    /// <summary>P(Λ &gt; days), for an order placed today.</summary>
    public double Survival(double days)
    {
        if (days <= 0)
            return 1;
        var log = Math.Log(days);
        if (_nodes.Length == 0)
            return StudentT.CDF(0, 1, _freedom, (_centre - log) / _scale);
        var sum = 0.0;
        foreach (var node in _nodes)
            sum += node.Share * NormalTail.Q((log - node.Mean) / node.Spread);
        return sum;
    }

    /// <summary>The chance that an order in flight that has waited so long is not here after so many days more.</summary>
    /// <param name="learnt">The order is one of those in flight that this lead time was made with; false where it was left out.</param>
    public double SurvivalGiven(double waits, double days, bool learnt = true) => SurvivalFunctionGiven(waits, learnt)(days);

    /// <summary>As <see cref="SurvivalGiven"/>, for asking about many days.</summary>
    internal Func<double, double> SurvivalFunctionGiven(double waits, bool learnt = true)
    {
        if (waits <= 0)
            return Survival;
        if (_nodes.Length == 0)
            return days => days <= 0 ? 1 : Survival(waits + days) / Survival(waits);
        var waited = Array.ConvertAll(_nodes, node => NormalTail.LogQ((Math.Log(waits) - node.Mean) / node.Spread));
        // That it has waited so long says which means and spreads are likely: what was learnt from it says so already.
        var shares = learnt ? Array.ConvertAll(_nodes, node => node.Share) : Weighed(waited);
        return days =>
        {
            if (days <= 0)
                return 1;
            var (after, sum) = (Math.Log(waits + days), 0.0);
            for (var i = 0; i < _nodes.Length; i++)
            {
                var z = (after - _nodes[i].Mean) / _nodes[i].Spread;
                // Q(z) < exp(−z²/2): what is next to nothing is not worked out, and far out that would take longest.
                if (z < 0 || z * z / 2 + waited[i] < Nothing)
                    sum += shares[i] * Math.Exp(NormalTail.LogQ(z) - waited[i]);
            }
            return sum;
        };
    }

    private double[] Weighed(double[] waited)
    {
        var top = Enumerable.Range(0, waited.Length).Max(i => Math.Log(_nodes[i].Share) + waited[i]);
        var weights = waited.Select((log, i) => Math.Exp(Math.Log(_nodes[i].Share) + log - top)).ToArray();
        var total = weights.Sum();
        return Array.ConvertAll(weights, weight => weight / total);
    }
}

/// <summary>One pair of mean and spread of ln Λ, with its posterior weight.</summary>
internal readonly record struct LeadTimeMixtureComponent(double Mean, double Spread, double Share)
{
    /// <summary>Trapezoid rules over the logarithm of the variance and over the mean given it: both converge exponentially.</summary>
    public static LeadTimeMixtureComponent[] Posterior(
        double centre,
        double weight,
        double variance,
        double freedom,
        ReadOnlySpan<double> waits
    )
    {
        // Half a standard deviation of the logarithm of the variance.
        var varianceStep = Math.Sqrt(0.5 / freedom);
        const double MeanStep = 0.75;
        const double MeanReach = 6.75;
        var nodes = new List<LeadTimeMixtureComponent>();
        var total = 0.0;
        for (var x = -3.6; x < 4 + 60 / freedom; x += varianceStep)
        {
            var spread = Math.Sqrt(variance * Math.Exp(x));
            var height = -freedom / 2 * (x + Math.Exp(-x) - 1);
            for (var v = -MeanReach; v <= MeanReach; v += MeanStep)
            {
                var mean = centre + v * spread / Math.Sqrt(weight);
                var log = height - v * v / 2;
                foreach (var waited in waits)
                    log += waited > 0 ? NormalTail.LogQ((Math.Log(waited) - mean) / spread) : 0;
                nodes.Add(new LeadTimeMixtureComponent(mean, spread, Math.Exp(log)));
                total += nodes[^1].Share;
            }
        }
        return [.. nodes.Where(node => node.Share > 1e-12 * total).Select(node => node with { Share = node.Share / total })];
    }
}

/// <summary>The practice's row for a workshop and a kind of unit: days in half of the orders, and in nine of ten.</summary>
public readonly record struct LeadTimePrior
{
    /// <summary>Predictive degrees of freedom before any order arrived.</summary>
    public const int DegreesOfFreedom = 4;

    // 90 % point of Student's t with 4 degrees of freedom.
    private const double NinetyPercent = 1.5332;

    public LeadTimePrior(double halfDays, double nineInTenDays)
    {
        if (!(halfDays > 0) || !double.IsFinite(nineInTenDays) || !(nineInTenDays > halfDays))
            throw new ArgumentOutOfRangeException(nameof(nineInTenDays), "A lead time needs 0 < P50 < P90.");
        (Centre, Scale) = (Math.Log(halfDays), Math.Log(nineInTenDays / halfDays) / NinetyPercent);
    }

    private LeadTimePrior(double centre, double scale, bool asIs) => (Centre, Scale, _) = (centre, scale, asIs);

    /// <summary>Another half time with the same spread about it.</summary>
    public LeadTimePrior WithMedian(double halfDays) => new(Math.Log(halfDays), Scale, asIs: true);

    /// <summary>Of ln Λ.</summary>
    public double Centre { get; }

    /// <summary>Of ln Λ, as a Student-t.</summary>
    public double Scale { get; }
}

/// <summary>How often a workshop's unit must be remade: a Beta distribution, counted in orders.</summary>
/// <param name="Remade">Pseudo-orders remade, and since.</param>
/// <param name="Kept">Pseudo-orders accepted, and since.</param>
public readonly record struct RemakeRate(double Remade, double Kept)
{
    /// <summary>One in twenty, weighing like twenty orders (common practice, no source).</summary>
    public static readonly RemakeRate Usual = new(1, 19);

    /// <summary>The chance that the next order is remade.</summary>
    public double Mean => Remade + Kept > 0 ? Remade / (Remade + Kept) : 0;

    public RemakeRate AddOutcomes(int remade, int kept) => new(Remade + remade, Kept + kept);
}
