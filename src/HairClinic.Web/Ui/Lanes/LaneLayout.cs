using HairClinic.Web.Ui.Feedback;

namespace HairClinic.Web.Ui.Lanes;

/// <summary>
/// Lays a day out in columns of five minutes. A table's own column spans place every visit, so that nothing
/// needs a style of its own, and each lane reads in order without its picture.
/// </summary>
public sealed class LaneLayout
{
    public const int Step = 5;
    private readonly IReadOnlyList<LaneBlock> _blocks;
    private readonly int? _now;
    private readonly int _shortestGap;

    public LaneLayout(int opens, int closes, IReadOnlyList<LaneBlock> blocks, int? now = null, int shortestGap = 15)
    {
        _blocks = blocks;
        _now = now;
        _shortestGap = shortestGap;
        From = blocks.Select(block => block.StartMinute).Append(opens).Min() / 60 * 60;
        Until = (blocks.Select(block => block.EndMinute).Append(closes).Max() + 59) / 60 * 60;
        Opens = opens;
        Closes = closes;
    }

    /// <summary>First and last minute drawn: the opening hours, widened to whole hours and to whatever lies outside them.</summary>
    public int From { get; }
    public int Until { get; }
    public int Opens { get; }
    public int Closes { get; }
    public int Columns => (Until - From) / Step;
    public IEnumerable<int> Hours => Enumerable.Range(From / 60, (Until - From) / 60);

    /// <summary>The lane's stretches in order; their columns add up to the whole day.</summary>
    public IReadOnlyList<LaneStretch> Lane(Guid chair)
    {
        var cells = new List<LaneStretch>();
        var at = From;
        foreach (var block in _blocks.Where(block => block.ChairId == chair).OrderBy(block => block.StartMinute))
        {
            var start = Math.Max(at, block.StartMinute / Step * Step);
            var end = Math.Max(start + Step, (block.EndMinute + Step - 1) / Step * Step);
            Free(cells, chair, at, start);
            cells.Add(new((end - start) / Step, block));
            at = end;
        }
        Free(cells, chair, at, Until);
        return cells;
    }

    private void Free(List<LaneStretch> cells, Guid chair, int from, int until)
    {
        if (until <= from)
            return;
        var earliest = Math.Max(Opens, _now is { } minute ? (minute + Step - 1) / Step * Step : from);
        var start = Math.Clamp(earliest, from, until);
        var end = Math.Clamp(Closes, start, until);
        if (end - start < _shortestGap)
        {
            cells.Add(new((until - from) / Step));
            return;
        }
        if (start > from)
            cells.Add(new((start - from) / Step));
        cells.Add(new((end - start) / Step, Gap: new(chair, start, end)));
        if (until > end)
            cells.Add(new((until - end) / Step));
    }
}

/// <summary>A visit on a chair. Minutes count from the salon's midnight.</summary>
/// <param name="Title">Who; blanked by the cover.</param>
/// <param name="Subtitle">What for, and whose hands.</param>
/// <param name="State">The word for where it stands: "booked", "arrived".</param>
/// <param name="Href">Where a tap leads; null: nowhere.</param>
public sealed record LaneBlock(
    Guid Id,
    Guid ChairId,
    int StartMinute,
    int EndMinute,
    string Title,
    string? Subtitle,
    string State,
    string? Href
)
{
    public StateMark Mark { get; init; } = StateMark.Open;

    /// <summary>Hands-on and waiting spells inside the visit; empty means hands-on throughout.</summary>
    public IReadOnlyList<LaneBlockSegment> Segments { get; init; } = [];
}

/// <summary>A stretch of a lane: a visit, a gap that can be filled, or time that is past or too short.</summary>
public sealed record LaneStretch(int Columns, LaneBlock? Block = null, LaneGap? Gap = null);

/// <summary>Free time on a chair, in minutes from the salon's midnight.</summary>
public sealed record LaneGap(Guid ChairId, int StartMinute, int EndMinute);

/// <summary>A spell inside a visit: hands are on, or a coat is drying and hands are free.</summary>
public sealed record LaneBlockSegment(bool HandsOn, int StartMinute, int EndMinute);
