namespace HairClinic.Domain.Wear.Curves;

/// <summary>The only stretches on which the likelihood can put weight: a lower end followed at once by an upper end.</summary>
internal sealed class InnermostIntervals
{
    // Ends in order of time; at one time: a known end begins, intervals close (their last day is included), others open after it.
    private const int Known = 0;
    private const int Closes = 1;
    private const int Opens = 2;
    private readonly List<(double Time, int Rank)> _begins = [];
    private readonly List<(double Time, int Rank)> _ends = [];

    public int Count => _begins.Count;

    public double StartOf(int cell) => _begins[cell].Time;

    public double EndOf(int cell) => _ends[cell].Time;

    public static InnermostIntervals Find(ReadOnlySpan<Spell> spells)
    {
        var marks = new SortedSet<(double Time, int Rank)>();
        foreach (var spell in spells)
        {
            marks.Add(Begin(spell));
            marks.Add((spell.Upper, Closes));
        }
        var cells = new InnermostIntervals();
        (double Time, int Rank)? open = null;
        foreach (var mark in marks)
        {
            if (mark.Rank != Closes)
            {
                open = mark;
                continue;
            }
            if (open is { } begun)
            {
                cells._begins.Add(begun);
                cells._ends.Add(mark);
            }
            open = null;
        }
        return cells;
    }

    /// <summary>The first and last cell a spell's end can lie in.</summary>
    public (int First, int Last) CellRangeOf(Spell spell)
    {
        var first = _begins.BinarySearch(Begin(spell));
        var last = _ends.BinarySearch((spell.Upper, Closes));
        return (first < 0 ? ~first : first, last < 0 ? ~last - 1 : last);
    }

    private static (double Time, int Rank) Begin(Spell spell) => (spell.Lower, spell.End == SpellEnd.At ? Known : Opens);
}
