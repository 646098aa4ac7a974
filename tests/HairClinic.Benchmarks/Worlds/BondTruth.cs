using HairClinic.Benchmarks.Calibration;
using HairClinic.Domain.Bonding;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>How long one bond truly holds, and what is heard of its lift.</summary>
/// <remarks>
/// Of clients whose bond lifts 55 % know the day, and come within three days; of the others it is seen at the next contact (every 4 to 14
/// days), or at the take-down. A bond that is taken down before it lifts held at least so long.
/// </remarks>
internal sealed class BondTruth
{
    private readonly bool _isKnown;
    private readonly int _sound;

    public BondTruth(double hold, Dice dice)
    {
        Hold = hold;
        _isKnown = dice.Chance(0.55);
        var later = dice.Whole(0, 3);
        var contact = dice.Whole(4, 14);
        for (; contact < hold; contact += dice.Whole(4, 14))
            _sound = contact;
        ComesAfter = _isKnown ? Day + later : contact;
    }

    /// <summary>Days.</summary>
    public double Hold { get; }

    /// <summary>Days from the bond after which the lift brings the client in.</summary>
    public int ComesAfter { get; }

    private int Day => Math.Max(1, (int)Math.Round(Hold));

    /// <param name="days">From the bond until it is taken down.</param>
    public HoldObservation Seen(int days)
    {
        if (Hold >= days)
            return new HoldObservation(HoldCensoring.AtLeast, days, null);
        var (lower, upper) = _isKnown ? (Day, Day) : (Math.Min(_sound, days - 1), days);
        return new HoldObservation(lower == upper ? HoldCensoring.Exact : HoldCensoring.Between, lower, upper);
    }
}
