namespace HairClinic.Web.Features.Lasting;

/// <summary>How many of a group go on, over days; where some ends are known only within an interval, by the estimate that reads those.</summary>
/// <param name="ByIntervals">Turnbull's estimate: it has no band, and between two points it does not say how the curve falls.</param>
/// <param name="Settled">The search for it came to rest.</param>
/// <param name="Median">Day by which half had ended; null where half has not.</param>
/// <param name="Low">95 % limit; for <paramref name="ByIntervals"/> the beginning of the stretch in which the median lies, which is no limit.</param>
public sealed record GroupCurve(
    IReadOnlyList<GroupCurve.Point> Points,
    bool ByIntervals,
    bool Settled,
    double? Median,
    double? Low,
    double? High,
    double LastDay
)
{
    public readonly record struct Point(double Day, double Share, double? Low, double? High);

    public static GroupCurve Estimate(IEnumerable<Spell> spells)
    {
        // Days are whole, so many spells are alike: the estimates read weights.
        var counted = spells.CountBy(s => (s.End, s.Lower, s.Upper)).Select(s => Weighted(s.Key, s.Value)).ToArray();
        return SurvivalCurve.CanEstimate(counted) ? Exact(SurvivalCurve.Estimate(counted)) : Within(counted);
    }

    /// <summary>What goes on after a day, with its band; null where nothing of the group was watched so long.</summary>
    public Point? At(double day)
    {
        if (day > LastDay)
            return null;
        var after = Points.Where(p => p.Day <= day).ToList();
        return after.Count == 0 ? new(day, 1, 1, 1) : after[^1] with { Day = day };
    }

    private static GroupCurve Exact(SurvivalCurve curve)
    {
        var points = new List<Point> { new(0, 1, 1, 1) };
        points.AddRange(curve.Steps.Select(s => new Point(s.Time, s.Survival, Number(s.Lower), Number(s.Upper))));
        if (curve.LastTime > points[^1].Day)
            points.Add(points[^1] with { Day = curve.LastTime });
        var median = curve.Quantile(0.5);
        return new(points, ByIntervals: false, Settled: true, median.Time, median.Lower, median.Upper, curve.LastTime);
    }

    private static GroupCurve Within(Spell[] spells)
    {
        var curve = TurnbullCurve.Estimate(spells);
        var points = new List<Point> { new(0, 1, null, null) };
        foreach (var step in curve.Steps)
        {
            if (step.From > points[^1].Day)
                points.Add(new(step.From, points[^1].Share, null, null));
            if (double.IsFinite(step.To))
                points.Add(new(step.To, step.Survival, null, null));
        }
        var last = spells.Max(s => double.IsFinite(s.Upper) ? s.Upper : s.Lower);
        if (last > points[^1].Day)
            points.Add(points[^1] with { Day = last });
        var half = curve.Steps.Where(s => s.Survival <= 0.5 && double.IsFinite(s.To)).Select(s => (TurnbullStep?)s).FirstOrDefault();
        return new(points, ByIntervals: true, curve.Converged, (half?.From + half?.To) / 2, half?.From, half?.To, last);
    }

    private static double? Number(double value) => double.IsNaN(value) ? null : value;

    private static Spell Weighted((SpellEnd End, double Lower, double Upper) spell, int count) =>
        spell.End == SpellEnd.At ? Spell.Exact(spell.Upper, count) : Spell.FromBounds(spell.Lower, spell.Upper, count);
}
