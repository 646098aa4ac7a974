using System.Text.Json.Serialization;

namespace HairClinic.Domain.Wear;

/// <summary>When a patch test is read and how long it counts, for one product.</summary>
/// <remarks>
/// Usual values: read at 48 and 96 hours, valid 6 months (sources differ; a practice edits them, a product's label governs).
/// Hours are elapsed time; validity is calendar months and includes the day of the same number, so a test of
/// 10 January still counts on 10 July and no longer on the 11th.
/// </remarks>
public sealed record PatchTestRule
{
    /// <param name="firstReadingHours">24 to 168.</param>
    /// <param name="secondReadingHours">At least the first, at most 336.</param>
    /// <param name="validMonths">1 to 24.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public PatchTestRule(int firstReadingHours = 48, int secondReadingHours = 96, int validMonths = 6)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(firstReadingHours, 24);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(firstReadingHours, 168);
        ArgumentOutOfRangeException.ThrowIfLessThan(secondReadingHours, firstReadingHours);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(secondReadingHours, 336);
        ArgumentOutOfRangeException.ThrowIfLessThan(validMonths, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(validMonths, 24);
        (FirstReadingHours, SecondReadingHours, ValidMonths) = (firstReadingHours, secondReadingHours, validMonths);
    }

    public int FirstReadingHours { get; }

    public int SecondReadingHours { get; }

    public int ValidMonths { get; }

    /// <summary>This rule made at least as careful as a product's label: never fewer hours, never a longer validity.</summary>
    public PatchTestRule CombineStrictest(PatchTestRule label) =>
        new(
            Math.Max(FirstReadingHours, label.FirstReadingHours),
            Math.Max(SecondReadingHours, label.SecondReadingHours),
            Math.Min(ValidMonths, label.ValidMonths)
        );

    public Instant FirstReadingAt(PatchTestReadings test) => test.AppliedAt + Duration.FromHours(FirstReadingHours);

    public Instant SecondReadingAt(PatchTestReadings test) => test.AppliedAt + Duration.FromHours(SecondReadingHours);

    public LocalDate LastValidDay(PatchTestReadings test) => test.AppliedOn.PlusMonths(ValidMonths);

    /// <summary>May a bond with the product begin? Asked when it does, with what is recorded by then.</summary>
    /// <param name="test">The client's latest test of the product, if any.</param>
    /// <param name="bondingAt">The moment the bond begins.</param>
    /// <param name="visitOn">The visit's day in its salon, by which expiry is judged.</param>
    public PatchTestVerdict Judge(PatchTestReadings? test, Instant bondingAt, LocalDate visitOn) =>
        test switch
        {
            null => PatchTestVerdict.NeverTested,
            { HasReacted: true } => PatchTestVerdict.Reacted,
            { } made when visitOn > LastValidDay(made) => PatchTestVerdict.Expired,
            { } made when bondingAt < FirstReadingAt(made) => PatchTestVerdict.TooSoon,
            { FirstReading: PatchTestReadingResult.NotRead, SecondReading: PatchTestReadingResult.NotRead } => PatchTestVerdict.NotRead,
            { FirstReading: PatchTestReadingResult.NotRead } made when bondingAt < SecondReadingAt(made) => PatchTestVerdict.NotRead,
            { FirstReading: PatchTestReadingResult.NotRead } => PatchTestVerdict.FirstReadingMissed,
            { } made when bondingAt < SecondReadingAt(made) => PatchTestVerdict.SecondReadingToCome,
            { SecondReading: PatchTestReadingResult.Clear } => PatchTestVerdict.Clear,
            _ => PatchTestVerdict.SecondReadingMissed,
        };

    /// <summary>What a visit booked for later rests on, with what is recorded so far.</summary>
    /// <remarks>Held while the first reading still has time to be made and turn out clear before the visit.</remarks>
    public BookingFirmness BookingFirmnessOf(PatchTestReadings? test, Instant visitStartsAt, LocalDate visitOn) =>
        Judge(test, visitStartsAt, visitOn) switch
        {
            PatchTestVerdict.NotRead => BookingFirmness.Held,
            var verdict when verdict.Blocks() => BookingFirmness.BackToDesk,
            _ => BookingFirmness.Firm,
        };
}

/// <summary>What was seen where a product was tried on the skin.</summary>
public enum PatchTestReadingResult
{
    NotRead,
    Clear,
    Reaction,
}

/// <summary>One patch test of one product on one client. A clear test is no guarantee.</summary>
/// <param name="AppliedAt">When the product was put on the skin.</param>
/// <param name="AppliedOn">The salon's civil day of that moment: validity is counted in calendar months from it.</param>
public readonly record struct PatchTestReadings(Instant AppliedAt, LocalDate AppliedOn)
{
    public PatchTestReadingResult FirstReading { get; init; }
    public PatchTestReadingResult SecondReading { get; init; }

    public bool HasReacted => FirstReading == PatchTestReadingResult.Reaction || SecondReading == PatchTestReadingResult.Reaction;
}

/// <summary>What a product's patch test says about bonding with it at a given moment. Stored by name.</summary>
[JsonConverter(typeof(JsonStringEnumConverter<PatchTestVerdict>))]
public enum PatchTestVerdict
{
    /// <summary>Both readings clear and in date.</summary>
    Clear,

    /// <summary>Warn: the first reading is clear, the second is still to come.</summary>
    SecondReadingToCome,

    /// <summary>Warn: the first reading is clear; the second was due and was not made.</summary>
    SecondReadingMissed,

    /// <summary>Warn: only the second reading was made, and is clear.</summary>
    FirstReadingMissed,

    /// <summary>Block: this product was never tried on this client.</summary>
    NeverTested,

    /// <summary>Block: the skin reacted. Time does not lift this.</summary>
    Reacted,

    /// <summary>Block: older than its validity on the visit's day.</summary>
    Expired,

    /// <summary>Block: the first reading cannot be made before then.</summary>
    TooSoon,

    /// <summary>Block: the time for the first reading has come, but nobody has recorded one.</summary>
    NotRead,
}

/// <summary>What a bonding visit rests on while its patch test runs.</summary>
public enum BookingFirmness
{
    /// <summary>The test allows it as things stand.</summary>
    Firm,

    /// <summary>Kept for the client until the first reading, which falls before it.</summary>
    Held,

    /// <summary>The test cannot allow it: the desk must find another day, product or plan.</summary>
    BackToDesk,
}

/// <summary>How hard each verdict is.</summary>
public static class PatchTestVerdictExtensions
{
    public static bool Blocks(this PatchTestVerdict verdict) => verdict >= PatchTestVerdict.NeverTested;

    public static bool Warns(this PatchTestVerdict verdict) =>
        verdict is PatchTestVerdict.SecondReadingToCome or PatchTestVerdict.SecondReadingMissed or PatchTestVerdict.FirstReadingMissed;
}
