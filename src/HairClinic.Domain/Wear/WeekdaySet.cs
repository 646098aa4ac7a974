namespace HairClinic.Domain.Wear;

/// <summary>A set of weekdays: the days a salon is open, or the days a client likes to come.</summary>
/// <remarks>The default value is the empty set. <see cref="Bits"/> is what is stored: Monday is bit 0, Sunday bit 6.</remarks>
public readonly record struct WeekdaySet
{
    private const int EveryBit = 0b111_1111;

    /// <param name="bits">0 to 127; Monday is bit 0, Sunday bit 6.</param>
    /// <exception cref="ArgumentOutOfRangeException">A bit outside the seven days is set.</exception>
    public WeekdaySet(int bits)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(bits);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(bits, EveryBit);
        Bits = (byte)bits;
    }

    public byte Bits { get; }

    public static WeekdaySet None => default;

    public static WeekdaySet Every => new(EveryBit);

    public bool IsEmpty => Bits == 0;

    public static WeekdaySet Of(params ReadOnlySpan<IsoDayOfWeek> days)
    {
        var bits = 0;
        foreach (var day in days)
        {
            ArgumentOutOfRangeException.ThrowIfEqual((int)day, (int)IsoDayOfWeek.None, nameof(days));
            bits |= 1 << ((int)day - 1);
        }

        return new(bits);
    }

    public bool Contains(IsoDayOfWeek day) => day != IsoDayOfWeek.None && (Bits & (1 << ((int)day - 1))) != 0;
}
