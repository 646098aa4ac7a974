using HairClinic.Benchmarks.Calibration;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>
/// How one unit wears, seen: damage grows as a power of the share of its life that is used, faster or slower at first from unit to unit; one
/// of four items leads and ends it, the others lag behind. An item's grade is how many thresholds its damage has passed.
/// </summary>
/// <remarks>An invention of its own: nothing of it is how the engine reads grades.</remarks>
internal sealed class WearPath
{
    private readonly double _power;
    private readonly double[] _items;
    private readonly double[] _thresholds;

    public WearPath(Dice dice)
    {
        _power = 1.3 * Math.Exp(0.3 * dice.Normal());
        _items = [.. Enumerable.Range(0, 4).Select(_ => 0.4 + 0.5 * dice.Share())];
        _items[dice.Whole(0, 3)] = 1;
        _thresholds = [0.25 + 0.1 * dice.Share(), 0.6 + 0.1 * dice.Share(), 1, 1.3];
    }

    /// <param name="used">Share of the life that is used; from 1 on it is worn out.</param>
    public int[] Grades(double used) => Array.ConvertAll(_items, item => _thresholds.Count(t => item * Math.Pow(used, _power) >= t));
}
