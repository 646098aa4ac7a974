using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Wear.Grades;

/// <summary>Weighs the grades of units of one window; it keeps the tables that all of them share, and may be used by several threads.</summary>
public sealed class GradeCurveBuilder
{
    // Some units end without warning: so much of what their grades say is not believed.
    private const double Unwarned = 0.1;
    private readonly GradeLink _link;
    private readonly GradeGrid _grid;
    private readonly CrossingTable _slight;
    private readonly CrossingTable _fair;

    public GradeCurveBuilder(GradeLink link, WindowPrior window)
        : this(link, new GradeGrid(window)) { }

    internal GradeCurveBuilder(GradeLink link, GradeGrid grid)
    {
        if (!link.IsValid)
            throw new ArgumentException("A link needs c1 < c2 < 0, a psi of at least 0 and finite numbers.", nameof(link));
        (_link, _grid) = (link, grid);
        // A little longer than the grid: whole vectors.
        var padded = Padded(grid.Count);
        _slight = new CrossingTable(Math.Exp(link.SlightLogSpread), padded);
        _fair = new CrossingTable(Math.Exp(link.FairLogSpread), padded);
    }

    public GradeCurve Build(UnitGrades grades)
    {
        var length = Padded(_grid.Count);
        var both = new double[length];
        Span<double> one = stackalloc double[length];
        Span<double> two = stackalloc double[length];
        Span<double> slight = stackalloc double[grades.Slight.Length];
        Span<double> fair = stackalloc double[grades.Fair.Length];
        var slightLast = EntryLikelihood.Fill(grades.Slight, _link.Misread, _link.Copied, slight);
        var fairLast = EntryLikelihood.Fill(grades.Fair, _link.Misread, _link.Copied, fair);
        for (var k = 0; k < GradeNodes.Uneven.Nodes.Length; k++)
        {
            var stretch = Math.Exp(_link.Unevenness * GradeNodes.Uneven.Nodes[k]);
            Threshold(_slight, grades.Slight, slight, slightLast, _link.SlightShift * stretch, one);
            Threshold(_fair, grades.Fair, fair, fairLast, _link.FairShift * stretch, two);
            VectorSums.Multiply(one, two, one);
            VectorSums.AddScaled(both, one, (1 - Unwarned) * GradeNodes.Uneven.Shares[k]);
        }
        var values = both[.._grid.Count];
        // The grades' chance as the window alone has it; what is summed is less by the share already taken off.
        var floor = Unwarned / (1 - Unwarned) * VectorSums.Dot(_grid.PriorShares, values);
        for (var i = 0; i < values.Length; i++)
            values[i] += floor;
        return new GradeCurve(_grid, values);
    }

    private void Threshold(
        CrossingTable table,
        ReadOnlySpan<GradeEntry> entries,
        ReadOnlySpan<double> jumps,
        double last,
        double shift,
        Span<double> onto
    )
    {
        onto.Fill(last);
        var everywhere = 0.0;
        for (var j = 0; j < entries.Length; j++)
            everywhere += table.AddTo(onto, _grid.Start + shift - entries[j].LogDays, jumps[j]);
        if (everywhere != 0)
        {
            for (var i = 0; i < onto.Length; i++)
                onto[i] += everywhere;
        }
    }

    private static int Padded(int count) => (count + 7) / 8 * 8;
}
