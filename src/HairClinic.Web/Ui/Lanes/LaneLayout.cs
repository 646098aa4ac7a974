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
    public IReadOnlyList<LaneCell> Lane(Guid chair)
    {
        var cells = new List<LaneCell>();
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

    private void Free(List<LaneCell> cells, Guid chair, int from, int until)
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
