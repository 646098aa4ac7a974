using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Replacement;

/// <summary>What certainty costs: for ways of ordering, the units that lie idle and the days without hair, for clients of one kind of unit.</summary>
/// <remarks>
/// A client's units follow one another; the next is ordered so many lives ahead of the day it is needed. With T the life, H the lives that
/// are still to be worn when it is ordered and X the days until it is ready, a replacement costs E(X − H)⁺ days without hair and
/// E(H − X)⁺ days of a unit lying idle, once in E T + E(X − H)⁺ days: the renewal-reward theorem (any textbook of stochastic processes),
/// for each value of the client's effect. That a late unit sets back those after it is left out. A client of whom nothing is known yet; what is learnt of one moves their day, not the average.
/// </remarks>
public sealed class CertaintyCost(ReorderInput question, RemainingLife each, int daysInSight = 1024)
{
    /// <summary>Nobody waits for a unit longer than a year: by then another way was found. (The mean of a log-t has no end.)</summary>
    public const int LongestWaitDays = 365;

    private readonly RemainingLife _new = each with { WornDays = 0 };
    private readonly ReorderRule _rule = new(daysInSight);
    private readonly double[] _waits = Waits(question, daysInSight);

    /// <summary>Ordered on the last day on which the chance of a gap is at most so much.</summary>
    public CertaintyOption WithChance(double alpha)
    {
        for (var lives = 1; lives < 12; lives++)
        {
            var asked = Ahead(lives) with { Alpha = alpha };
            if (_rule.Answer(asked).ReorderInDays is { } days)
                return Of(lives, days, alpha, spares: 0);
        }
        return Of(12, 0, alpha, spares: 0);
    }

    /// <summary>So many always ready beside the one worn, and the chance of a gap kept besides.</summary>
    public CertaintyOption WithSpares(int spares, double alpha)
    {
        var byChance = WithChance(alpha);
        return spares < byChance.LivesAhead ? byChance with { Spares = spares } : Of(spares, 0, alpha, spares);
    }

    /// <summary>The spares that the kind's own lives and leads ask for: two where a unit takes longer to come than to wear out, else one.</summary>
    public int Proposed
    {
        get
        {
            var rule = _rule.Answer(Ahead(1));
            return rule.GapIfOrderedToday > 0.5 ? 2 : 1;
        }
    }

    private ReorderInput Ahead(int lives) => question with { InHand = [.. Enumerable.Repeat(_new, lives)], InFlight = [], Spares = 0 };

    private CertaintyOption Of(int lives, int waitDays, double alpha, int spares)
    {
        var asked = Ahead(lives);
        var hair = new TotalHairLife(daysInSight);
        var one = new TotalHairLife(daysInSight);
        var (ended, worn) = (new double[daysInSight], new double[daysInSight]);
        var (gap, without, idle) = (0.0, 0.0, 0.0);
        for (var node = 0; node < question.Client.Shares.Length; node++)
        {
            var (place, share) = (question.Client.Nodes[node], question.Client.Shares[node]);
            Array.Clear(ended);
            Array.Clear(worn);
            hair.AddCumulativeTo(asked, place, 1, 0, _new, ended);
            one.AddCumulativeTo(Ahead(1), place, 1, 0, _new, worn);
            var (late, early, life) = (0.0, 0.0, 0.0);
            for (var day = 0; day < daysInSight; day++)
            {
                // The chance that the unit ordered is not ready by then.
                var notReady = day < waitDays ? 1 : _waits[day - waitDays];
                late += ended[day] * notReady;
                early += (1 - ended[day]) * (1 - notReady);
                life += 1 - worn[day];
                gap += share * ended[day] * ((day == 0 || day <= waitDays ? 1 : _waits[day - waitDays - 1]) - notReady);
            }
            without += share * late / (life + late);
            idle += share * early / (life + late);
        }
        return new(alpha, spares, lives, waitDays, Math.Clamp(gap, 0, 1), DaysWithoutPerYear: 365 * without, IdleUnits: idle);
    }

    // P(lead and preparation take longer than so many days), without closures.
    private static double[] Waits(ReorderInput question, int length)
    {
        var waits = new double[length];
        Array.Fill(waits, question.Lead.Never, 0, Math.Min(length, LongestWaitDays));
        for (var lead = 0; lead < question.Lead.Mass.Length; lead++)
        {
            for (var day = 0; day < Math.Min(LongestWaitDays, lead + question.PreparationDays); day++)
                waits[day] += question.Lead.Mass[lead];
        }
        return waits;
    }
}

/// <summary>One way of ordering and what it costs and buys, for a client of the kind.</summary>
/// <param name="Alpha">The chance of a gap that is accepted.</param>
/// <param name="Spares">Always ready beside the one worn; 0 where the chance alone decides.</param>
/// <param name="LivesAhead">Units still to be worn out, the one worn included, when the next is ordered.</param>
/// <param name="WaitDays">Days the order waits after the unit before went on.</param>
/// <param name="Gap">The share of replacements with a day without hair.</param>
/// <param name="DaysWithoutPerYear">Days without hair.</param>
/// <param name="IdleUnits">Units ready in house and not worn, on average.</param>
public sealed record CertaintyOption(
    double Alpha,
    int Spares,
    int LivesAhead,
    int WaitDays,
    double Gap,
    double DaysWithoutPerYear,
    double IdleUnits
);
