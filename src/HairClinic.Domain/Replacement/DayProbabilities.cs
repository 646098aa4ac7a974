using System.Numerics;
using System.Runtime.InteropServices;
using HairClinic.Domain.Wear.Grades;

namespace HairClinic.Domain.Replacement;

/// <summary>A chance spread over whole days from today: what falls within half a day of one is put on it.</summary>
/// <remarks>Only the stretch that holds anything is kept. A workspace owns the arrays; nothing is allocated while it is used.</remarks>
internal sealed class DayProbabilities(int length)
{
    // Room on both sides, always empty, so that a sum may look a little past either end.
    private const int Room = 32;
    private readonly double[] _cells = new double[length + 2 * Room];

    /// <summary>Less than this is not followed up.</summary>
    public const double Sliver = 1e-7;

    public Span<double> Mass => _cells.AsSpan(Room, length);

    /// <summary>The first day that holds anything, and the one after the last.</summary>
    public int First { get; set; }

    public int End { get; set; }

    public double Total
    {
        get
        {
            var total = 0.0;
            foreach (var mass in Mass[First..End])
                total += mass;
            return total;
        }
    }

    /// <summary>Nothing at all: over at once.</summary>
    public void SetAllOnToday()
    {
        Clear();
        (Mass[0], First, End) = (1, 0, 1);
    }

    public void Clear()
    {
        Mass[First..End].Clear();
        (First, End) = (0, 0);
    }

    /// <summary>Weighs each day's chance with what a unit's grades say of it; they add up to as much as before.</summary>
    /// <returns>How likely the grades are.</returns>
    public double Weigh(GradeWeights grades)
    {
        var (held, sum) = (Total, 0.0);
        for (var day = First; day < End; day++)
            sum += Mass[day] *= grades.OnDay(day);
        // What outlasts the grid is on no day, and stays so.
        sum += Math.Max(0, 1 - held) * grades.OnDay(length);
        foreach (ref var mass in Mass[First..End])
            mass /= sum;
        return sum;
    }

    /// <summary>The sum of two times that have nothing to do with each other; what lies past the grid is dropped.</summary>
    public void SetConvolution(DayProbabilities one, DayProbabilities other)
    {
        Clear();
        First = Math.Min(length, one.First + other.First);
        End = Math.Clamp(one.End + other.End - 1, First, length);
        // Sixteen days at once (on usual machines) are summed over all of the first time before they are put down.
        var width = Vector<double>.Count;
        ref var from = ref MemoryMarshal.GetArrayDataReference(other._cells);
        for (var day = First; day < End; day += 4 * width)
        {
            var (a, b, c, d) = (Vector<double>.Zero, Vector<double>.Zero, Vector<double>.Zero, Vector<double>.Zero);
            var last = Math.Min(one.End - 1, day + 4 * width - 1 - other.First);
            for (var i = Math.Max(one.First, day - other.End + 1); i <= last; i++)
            {
                var at = day - i + Room;
                var mass = new Vector<double>(one._cells[i + Room]);
                a = Vector.FusedMultiplyAdd(mass, Vector.LoadUnsafe(ref from, (nuint)at), a);
                b = Vector.FusedMultiplyAdd(mass, Vector.LoadUnsafe(ref from, (nuint)(at + width)), b);
                c = Vector.FusedMultiplyAdd(mass, Vector.LoadUnsafe(ref from, (nuint)(at + 2 * width)), c);
                d = Vector.FusedMultiplyAdd(mass, Vector.LoadUnsafe(ref from, (nuint)(at + 3 * width)), d);
            }
            a.CopyTo(_cells, day + Room);
            b.CopyTo(_cells, day + Room + width);
            c.CopyTo(_cells, day + Room + 2 * width);
            d.CopyTo(_cells, day + Room + 3 * width);
        }
        _cells.AsSpan(Room + length).Clear();
    }

    /// <summary>Adds a share of the chance that it is over before each day to a table.</summary>
    public void AddCumulativeTo(Span<double> table, double share)
    {
        var before = 0.0;
        for (var day = First; day < End; day++)
        {
            // A day's share is spread half before and half after it.
            table[day] += share * (before + Mass[day] / 2);
            before += Mass[day];
        }
        for (var day = End; day < table.Length; day++)
            table[day] += share * before;
    }
}
