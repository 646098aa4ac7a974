using System.Numerics;

namespace HairClinic.Domain.Replacement;

/// <summary>A chance spread over whole days from today: what falls within half a day of one is put on it.</summary>
/// <remarks>Only the stretch that holds anything is kept. A workspace owns the arrays; nothing is allocated while it is used.</remarks>
internal sealed class DayMass(int length)
{
    /// <summary>Less than this is not followed up.</summary>
    public const double Sliver = 1e-10;

    public double[] Mass { get; } = new double[length];

    /// <summary>The first day that holds anything, and the one after the last.</summary>
    public int First { get; set; }

    public int End { get; set; }

    public double Total
    {
        get
        {
            var total = 0.0;
            foreach (var mass in Mass.AsSpan(First, End - First))
                total += mass;
            return total;
        }
    }

    /// <summary>Nothing at all: over at once.</summary>
    public void SetToday()
    {
        Clear();
        (Mass[0], First, End) = (1, 0, 1);
    }

    public void Clear()
    {
        Array.Clear(Mass, First, End - First);
        (First, End) = (0, 0);
    }

    /// <summary>The sum of two times that have nothing to do with each other; what lies past the grid is dropped.</summary>
    public void SetSum(DayMass one, DayMass other)
    {
        Clear();
        First = Math.Min(Mass.Length, one.First + other.First);
        End = Math.Min(Mass.Length, one.End + other.End - 1);
        for (var i = one.First; i < one.End; i++)
        {
            var reach = Math.Min(other.End, Mass.Length - i);
            if (reach > other.First && one.Mass[i] > 0)
                AddScaled(Mass.AsSpan(i + other.First), other.Mass.AsSpan(other.First, reach - other.First), one.Mass[i]);
        }
        End = Math.Max(End, First);
    }

    /// <summary>Adds a share of the chance that it is over before each day to a table.</summary>
    public void AddEnded(Span<double> table, double share)
    {
        var before = 0.0;
        for (var day = First; day < End; day++)
        {
            // What is put on a day is spread half before and half after it.
            table[day] += share * (before + Mass[day] / 2);
            before += Mass[day];
        }
        for (var day = End; day < table.Length; day++)
            table[day] += share * before;
    }

    public static void AddScaled(Span<double> target, ReadOnlySpan<double> values, double factor)
    {
        var (i, wide) = (0, new Vector<double>(factor));
        for (; i <= values.Length - Vector<double>.Count; i += Vector<double>.Count)
            Vector.FusedMultiplyAdd(wide, new Vector<double>(values[i..]), new Vector<double>(target[i..])).CopyTo(target[i..]);
        for (; i < values.Length; i++)
            target[i] += factor * values[i];
    }

    public static double Dot(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        var (i, wide) = (0, Vector<double>.Zero);
        for (; i <= left.Length - Vector<double>.Count; i += Vector<double>.Count)
            wide = Vector.FusedMultiplyAdd(new Vector<double>(left[i..]), new Vector<double>(right[i..]), wide);
        var sum = Vector.Sum(wide);
        for (; i < left.Length; i++)
            sum += left[i] * right[i];
        return sum;
    }
}
