using HairClinic.Domain.Bonding;

namespace HairClinic.Domain.Wear.Curves;

/// <summary>How long something lasted, as far as it is known: a bond's hold or a unit's life, in days.</summary>
/// <remarks>
/// Treating "went on at least that long" as "ended then" is the classic mistake that makes every estimate drift shorter.
/// </remarks>
public readonly record struct Spell
{
    private Spell(SpellEnd end, double lower, double upper, double weight)
    {
        if (!(weight >= 0) || !double.IsFinite(weight))
            throw new ArgumentOutOfRangeException(nameof(weight), "A weight is 0 or more.");
        (End, Lower, Upper, Weight) = (end, lower, upper, weight);
    }

    public SpellEnd End { get; }

    /// <summary>The time it ended, or the last at which it was known to go on; 0 where none is known.</summary>
    public double Lower { get; }

    /// <summary>The time by which it had ended, included; infinite while it goes on.</summary>
    public double Upper { get; }

    /// <summary>How many such spells this one stands for.</summary>
    public double Weight { get; }

    /// <exception cref="ArgumentOutOfRangeException">The time is not above 0.</exception>
    public static Spell Exact(double time, double weight = 1) => new(SpellEnd.At, Positive(time), time, weight);

    /// <param name="time">0 tells nothing and is allowed: a bond made today.</param>
    public static Spell RightCensored(double time, double weight = 1) =>
        time == 0
            ? new(SpellEnd.After, 0, double.PositiveInfinity, weight)
            : new(SpellEnd.After, Positive(time), double.PositiveInfinity, weight);

    public static Spell LeftCensored(double time, double weight = 1) => new(SpellEnd.By, 0, Positive(time), weight);

    /// <summary>The tidiest form of (lower, upper]: exact where both are equal, open where one is missing.</summary>
    /// <exception cref="ArgumentOutOfRangeException">0 ≤ lower ≤ upper does not hold, or upper is not above 0.</exception>
    public static Spell FromBounds(double lower, double upper, double weight = 1)
    {
        if (double.IsPositiveInfinity(upper))
            return RightCensored(lower, weight);
        if (!(lower >= 0) || !(lower <= upper))
            throw new ArgumentOutOfRangeException(nameof(upper), "An interval needs 0 <= lower <= upper.");
        if (lower == 0)
            return LeftCensored(upper, weight);
        return lower == upper ? Exact(upper, weight) : new(SpellEnd.Between, lower, Positive(upper), weight);
    }

    /// <summary>A bond's hold as the model reads it.</summary>
    public static Spell FromHold(HoldObservation hold, double weight = 1) =>
        hold.Kind switch
        {
            HoldCensoring.Exact => Exact(hold.Lower, weight),
            HoldCensoring.Between => FromBounds(hold.Lower, hold.Upper!.Value, weight),
            _ => RightCensored(hold.Lower, weight),
        };

    private static double Positive(double time) =>
        time > 0 && double.IsFinite(time)
            ? time
            : throw new ArgumentOutOfRangeException(nameof(time), "A spell lasts longer than 0 and not for ever.");
}

/// <summary>What is known of a spell's end.</summary>
public enum SpellEnd
{
    /// <summary>It ended at a known time.</summary>
    At,

    /// <summary>It was still going on then (right-censored).</summary>
    After,

    /// <summary>It had ended by then (left-censored).</summary>
    By,

    /// <summary>It ended after one time and no later than another (interval-censored).</summary>
    Between,
}
