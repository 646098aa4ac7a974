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
    private const double PriorOrders = 4;
    private readonly LeadNode[] _nodes;
    private readonly double _centre;
    private readonly double _scale;
    private readonly double _freedom;

    private LeadTime(double centre, double scale, double freedom, LeadNode[] nodes, int arrived, int inFlight)
    {
        (_centre, _scale, _freedom, _nodes) = (centre, scale, freedom, nodes);
        (Arrived, InFlight) = (arrived, inFlight);
    }

    /// <summary>Orders behind it, besides the practice's row.</summary>
    public int Arrived { get; }

    public int InFlight { get; }

    /// <param name="arrivedDays">Working days each arrived order took; 0 counts as half a day.</param>
    /// <param name="waitedDays">Working days each order in flight has waited until today.</param>
    public static LeadTime Of(LeadTimePrior prior, ReadOnlySpan<double> arrivedDays, ReadOnlySpan<double> waitedDays)
    {
        var (n, sum, squares) = (arrivedDays.Length, 0.0, 0.0);
        foreach (var days in arrivedDays)
            sum += Math.Log(Math.Max(0.5, days));
        var mean = n == 0 ? 0 : sum / n;
        foreach (var days in arrivedDays)
            squares += Math.Pow(Math.Log(Math.Max(0.5, days)) - mean, 2);
        var weight = PriorOrders + n;
        var freedom = LeadTimePrior.DegreesOfFreedom + n;
        var centre = (PriorOrders * prior.Centre + n * mean) / weight;
        // The predictive scale holds the doubt about the mean too; the variance alone is smaller by that share.
        var variance = prior.Scale * prior.Scale * PriorOrders / (PriorOrders + 1);
        squares += LeadTimePrior.DegreesOfFreedom * variance + PriorOrders * n / weight * Math.Pow(mean - prior.Centre, 2);
        variance = squares / freedom;
        var nodes = waitedDays.IsEmpty ? [] : LeadNode.Grid(centre, weight, variance, freedom, waitedDays);
        return new LeadTime(centre, Math.Sqrt(variance * (1 + 1 / weight)), freedom, nodes, n, waitedDays.Length);
    }

    /// <summary>P(Λ &gt; days), for an order placed today.</summary>
    public double Later(double days)
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
    /// <remarks>The order is one of those in flight that this lead time was made with.</remarks>
    public double LaterGiven(double waitedDays, double days) => Given(waitedDays)(days);

    /// <summary>As <see cref="LaterGiven"/>, for asking about many days.</summary>
    internal Func<double, double> Given(double waitedDays)
    {
        if (waitedDays <= 0)
            return Later;
        if (_nodes.Length == 0)
            return days => days <= 0 ? 1 : Later(waitedDays + days) / Later(waitedDays);
        var waited = Array.ConvertAll(_nodes, node => NormalTail.LogQ((Math.Log(waitedDays) - node.Mean) / node.Spread));
        return days =>
        {
            if (days <= 0)
                return 1;
            var (after, sum) = (Math.Log(waitedDays + days), 0.0);
            for (var i = 0; i < _nodes.Length; i++)
                sum += _nodes[i].Share * Math.Exp(NormalTail.LogQ((after - _nodes[i].Mean) / _nodes[i].Spread) - waited[i]);
            return sum;
        };
    }
}
