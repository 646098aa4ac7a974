using System.Numerics;
using System.Runtime.InteropServices;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Wear.Grades;

/// <summary>The chance Q(w / ω) that a threshold lies at least w below, w in ln of days: looked up for a whole grid at once.</summary>
/// <remarks>
/// Kept in eight phases of the grid's step, each a row of its own: whatever the look's day, the grid's values are four neighbouring rows
/// with the same four weights (Lagrange's cubic). For ω of 0.2 that is off by 2e-9, for 0.06 by 3e-7.
/// </remarks>
internal sealed class CrossingTable
{
    private const int Phases = 8;

    // Q(7) is 1e-12.
    private const double Reach = 7;
    private readonly double[] _values;
    private readonly int _length;
    private readonly int _zero;
    private readonly int _reach;
    private readonly int _count;

    public CrossingTable(double spread, int count)
    {
        _count = count;
        _reach = (int)Math.Ceiling(Reach * spread / GradeGrid.Step) + 1;
        // Room for a whole grid before and after what is between 0 and 1.
        _zero = _reach + count + 2;
        _length = 2 * _zero + 1;
        _values = new double[Phases * _length];
        for (var phase = 0; phase < Phases; phase++)
        {
            for (var i = 0; i < _length; i++)
                _values[phase * _length + i] = NormalTail.Q((i - _zero + phase / (double)Phases) * GradeGrid.Step / spread);
        }
    }

    /// <summary>target[i] += factor · Q((first + i·step) / ω).</summary>
    /// <param name="first">w at the grid's first place.</param>
    /// <returns>What is to be added everywhere instead, where the chance is 1 all over the grid; else 0.</returns>
    public double AddTo(Span<double> target, double first, double factor)
    {
        var at = first / GradeGrid.Step;
        if (at > _reach)
            return 0;
        if (at < -_reach - _count)
            return factor;
        var fine = at * Phases;
        var whole = (int)Math.Floor(fine);
        var u = fine - whole;
        var (a, b) = (
            new Vector<double>(-factor * u * (u - 1) * (u - 2) / 6),
            new Vector<double>(factor * (u + 1) * (u - 1) * (u - 2) / 2)
        );
        var (c, d) = (new Vector<double>(-factor * (u + 1) * u * (u - 2) / 2), new Vector<double>(factor * (u + 1) * u * (u - 1) / 6));
        ref var to = ref MemoryMarshal.GetReference(target);
        ref var before = ref Row(whole - 1);
        ref var here = ref Row(whole);
        ref var next = ref Row(whole + 1);
        ref var second = ref Row(whole + 2);
        var i = 0;
        for (; i <= target.Length - Vector<double>.Count; i += Vector<double>.Count)
        {
            var at0 = (nuint)i;
            var sum = Vector.FusedMultiplyAdd(a, Vector.LoadUnsafe(ref before, at0), Vector.LoadUnsafe(ref to, at0));
            var rest = c * Vector.LoadUnsafe(ref next, at0);
            sum = Vector.FusedMultiplyAdd(b, Vector.LoadUnsafe(ref here, at0), sum);
            rest = Vector.FusedMultiplyAdd(d, Vector.LoadUnsafe(ref second, at0), rest);
            (sum + rest).StoreUnsafe(ref to, at0);
        }
        return 0;
    }

    private ref double Row(int fine)
    {
        var phase = fine & (Phases - 1);
        var start = (fine - phase) / Phases + _zero;
        return ref _values.AsSpan(phase * _length + start, _count)[0];
    }
}
