namespace HairClinic.Web.Learning;

/// <summary>The right side of the wear line: bars that fade, brackets of likely ends, the post of the next order.</summary>
internal static class WearLineFutureBuilder
{
    /// <summary>What lies farther is cut off: a line of years would show nothing of the weeks.</summary>
    public const int MonthsAhead = 15;

    private const int Points = 16;

    /// <summary>
    /// One unit is worn at a time: the one on the head fades from today, those that wait from the day the one before is
    /// worn out as likely as not.
    /// </summary>
    public static List<WearLineUnit> AddForecast(
        List<WearLineUnit> lanes,
        IReadOnlyCollection<UnitWithKindName> units,
        WearLineForecast ahead,
        LocalDate today
    )
    {
        var ids = units.ToDictionary(u => u.Unit.Serial, u => u.Unit.Id);
        var inHand = lanes
            .Where(lane => ahead.Left.ContainsKey(ids[lane.Serial]))
            .OrderByDescending(lane => lane.Open is not null)
            .ToList();
        var start = today;
        var faded = new Dictionary<string, WearLineUnit>();
        foreach (var lane in inHand)
        {
            var (life, worn) = ahead.Left[ids[lane.Serial]];
            var (early, late) = (life.WholeDayQuantileGiven(worn, 0.1), life.WholeDayQuantileGiven(worn, 0.9));
            var reach = Math.Max(1, life.WholeDayQuantileGiven(worn, 0.98));
            faded[lane.Serial] = lane with
            {
                Fade =
                [
                    .. Enumerable
                        .Range(0, Points + 1)
                        .Select(i => reach * i / Points)
                        .Distinct()
                        .Select(day => new WearSurvivalPoint(start.PlusDays(day), life.SurvivalGiven(worn, day))),
                ],
                Band = new PredictedEndRange(start.PlusDays(early), start.PlusDays(late)),
            };
            start = start.PlusDays(life.WholeDayQuantileGiven(worn, 0.5));
        }
        // The post stands on the unit whose end it is calculated from: the last that is in hand, or the next to come.
        var posted = inHand.LastOrDefault()?.Serial ?? lanes.LastOrDefault(lane => lane.Retired is null)?.Serial;
        return
        [
            .. lanes.Select(lane =>
            {
                var drawn = faded.GetValueOrDefault(lane.Serial, lane);
                return lane.Serial == posted ? drawn with { ReorderBy = ahead.ReorderBy } : drawn;
            }),
        ];
    }

    /// <summary>What would be drawn past the end is cut off at it.</summary>
    public static WearLineUnit ClipUnit(WearLineUnit lane, LocalDate end)
    {
        if (lane.Fade.Count > 0 && lane.Fade[^1].On > end)
        {
            var kept = lane.Fade.Where(f => f.On < end).ToList();
            var (before, after) = (lane.Fade.LastOrDefault(f => f.On < end), lane.Fade.First(f => f.On >= end));
            if (before is not null)
            {
                var share = (double)Period.DaysBetween(before.On, end) / Math.Max(1, Period.DaysBetween(before.On, after.On));
                kept.Add(new WearSurvivalPoint(end, before.Survival + share * (after.Survival - before.Survival)));
            }
            lane = lane with { Fade = kept };
        }
        if (lane.Band is { } band && band.Late > end)
            lane = lane with { Band = band.Early < end ? new PredictedEndRange(band.Early, end) : null };
        if (lane.PromisedTo > end)
            lane = lane with { PromisedTo = end, PromisedFrom = LocalDate.Min(lane.PromisedFrom ?? end, end) };
        return lane.ReorderBy > end ? lane with { ReorderBy = null } : lane;
    }
}

/// <summary>What is expected of a client's units, for the right side of the wear line.</summary>
/// <param name="Left">By unit in hand: how long it lasts, and what it was worn already.</param>
/// <param name="Arrivals">By unit in flight: the days between which it will be here with 80 % chance.</param>
public sealed record WearLineForecast(
    IReadOnlyDictionary<Guid, (LifePrediction Life, int WornDays)> Left,
    IReadOnlyDictionary<Guid, (LocalDate Early, LocalDate Late)> Arrivals,
    LocalDate? ReorderBy,
    WearLineGap? Gap
)
{
    /// <summary>What the lives stand on, where the newest recalculation found no answer.</summary>
    public ModelBasis? Basis { get; init; }

    public static readonly WearLineForecast Unknown = new(
        new Dictionary<Guid, (LifePrediction, int)>(),
        new Dictionary<Guid, (LocalDate, LocalDate)>(),
        null,
        null
    );
}
