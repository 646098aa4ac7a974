namespace HairClinic.Domain.Replacement;

/// <summary>
/// Orders whose days lie beyond 99.9 % of what their workshop is believed to take: a date was typed wrong, or nobody asked after
/// them any more. Their dates are asked about, and nothing is learnt from them until somebody answers.
/// </summary>
/// <remarks>
/// Several wrong dates hide one another where each is judged with the rest: they make the spread wide. So what is believed starts
/// from the practice's row and the half of the orders that lie closest together, and takes in one order after another, the closest
/// first, as long as it lies within. What is never taken in is asked about.
/// </remarks>
public static class OutlyingLeads
{
    /// <summary>The chance that is left beyond: of an order that arrived half of it at either end, of one in flight all of it.</summary>
    public const double Beyond = 0.001;

    // Of fewer a half says nothing: then the practice's row alone is the start.
    private const int LeastForHalf = 4;

    /// <param name="arrived">The working days each arrived order took.</param>
    /// <param name="inFlight">The working days each order in flight has waited.</param>
    public static OutlyingLeadsFound Find(LeadTimePrior prior, IReadOnlyList<LeadToJudge> arrived, IReadOnlyList<LeadToJudge> inFlight)
    {
        var kept = StartOf(arrived);
        var lead = Learn(prior, arrived, kept, []);
        while (Closest(arrived, kept, lead) is { } next && IsWithin(lead, arrived[next].Days))
        {
            kept[next] = true;
            lead = Learn(prior, arrived, kept, []);
        }
        var waiting = Waiting(prior, arrived, kept, lead, inFlight);
        return new OutlyingLeadsFound([.. Left(kept)], [.. Left(waiting)], lead);
    }

    /// <summary>Whether an order that has just arrived lies within what is believed of its kind.</summary>
    public static bool IsWithin(LeadTime lead, double days) =>
        lead.Survival(LeadTime.CountedDays(days)) is > Beyond / 2 and < 1 - Beyond / 2;

    // Waits are judged by what arrived; where one lies beyond, once more beside the waits that do not: in a slow season all are longer.
    private static bool[] Waiting(
        LeadTimePrior prior,
        IReadOnlyList<LeadToJudge> arrived,
        bool[] kept,
        LeadTime lead,
        IReadOnlyList<LeadToJudge> inFlight
    )
    {
        var within = Within(lead);
        if (within.Contains(false))
            within = Within(Learn(prior, arrived, kept, [.. inFlight.Where((_, i) => within[i]).Select(w => w.Days)]));
        return within;

        bool[] Within(LeadTime believed) => [.. inFlight.Select(w => w.IsTrusted || believed.Survival(w.Days) >= Beyond)];
    }

    /// <summary>What somebody said is right, and the shortest stretch that holds half of the orders.</summary>
    private static bool[] StartOf(IReadOnlyList<LeadToJudge> arrived)
    {
        var kept = arrived.Select(a => a.IsTrusted).ToArray();
        if (arrived.Count < LeastForHalf)
            return kept;
        var order = Enumerable.Range(0, arrived.Count).OrderBy(i => arrived[i].Log).ToArray();
        var half = (arrived.Count + 1) / 2;
        var from = Enumerable.Range(0, arrived.Count - half + 1).MinBy(i => arrived[order[i + half - 1]].Log - arrived[order[i]].Log);
        foreach (var i in order.AsSpan(from, half))
            kept[i] = true;
        return kept;
    }

    private static int? Closest(IReadOnlyList<LeadToJudge> arrived, bool[] kept, LeadTime lead)
    {
        int? closest = null;
        for (var i = 0; i < kept.Length; i++)
        {
            if (!kept[i] && (closest is not { } other || lead.Distance(arrived[i].Log) < lead.Distance(arrived[other].Log)))
                closest = i;
        }
        return closest;
    }

    private static LeadTime Learn(LeadTimePrior prior, IReadOnlyList<LeadToJudge> arrived, bool[] kept, double[] waits) =>
        LeadTime.Learn(prior, arrived.Where((_, i) => kept[i]).Select(a => a.Days).ToArray(), waits);

    private static IEnumerable<int> Left(bool[] kept) => Enumerable.Range(0, kept.Length).Where(i => !kept[i]);
}

/// <summary>One order as it is judged.</summary>
/// <param name="Days">Working days it took, or has waited.</param>
/// <param name="IsTrusted">Somebody said that its dates are right: it counts, however far out it lies.</param>
public readonly record struct LeadToJudge(double Days, bool IsTrusted = false)
{
    internal double Log => Math.Log(LeadTime.CountedDays(Days));
}

/// <param name="Arrived">Of those that arrived, the places of those that are asked about.</param>
/// <param name="InFlight">Of those in flight, likewise.</param>
/// <param name="Believed">From the practice's row and the arrived orders that are not.</param>
public sealed record OutlyingLeadsFound(IReadOnlyList<int> Arrived, IReadOnlyList<int> InFlight, LeadTime Believed)
{
    /// <summary>Four orders in five take between these working days.</summary>
    public (int From, int To) Usual()
    {
        var table = LeadTimeTable.FromLeadTime(Believed, remakeRate: 0, inspectionDays: 0, LeadTime.Days);
        return (table.Quantile(0.1), table.Quantile(0.9));
    }
}
