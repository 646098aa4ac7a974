using NodaTime;

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
    public PatchTestRule NeverBelow(PatchTestRule label) =>
        new(
            Math.Max(FirstReadingHours, label.FirstReadingHours),
            Math.Max(SecondReadingHours, label.SecondReadingHours),
            Math.Min(ValidMonths, label.ValidMonths)
        );

    public Instant FirstReadingAt(PatchTest test) => test.AppliedAt + Duration.FromHours(FirstReadingHours);

    public Instant SecondReadingAt(PatchTest test) => test.AppliedAt + Duration.FromHours(SecondReadingHours);

    public LocalDate LastValidDay(PatchTest test) => test.AppliedOn.PlusMonths(ValidMonths);

    /// <summary>May a bond with the product begin? Asked when it does, with what is recorded by then.</summary>
    /// <param name="test">The client's latest test of the product, if any.</param>
    /// <param name="bondingAt">The moment the bond begins.</param>
    /// <param name="visitOn">The visit's day in its salon, by which expiry is judged.</param>
    public PatchVerdict Judge(PatchTest? test, Instant bondingAt, LocalDate visitOn) =>
        test switch
        {
            null => PatchVerdict.NeverTested,
            { HasReacted: true } => PatchVerdict.Reacted,
            { } made when visitOn > LastValidDay(made) => PatchVerdict.Expired,
            { } made when bondingAt < FirstReadingAt(made) => PatchVerdict.TooSoon,
            { FirstReading: PatchReading.NotRead, SecondReading: PatchReading.NotRead } => PatchVerdict.NotRead,
            { FirstReading: PatchReading.NotRead } made when bondingAt < SecondReadingAt(made) => PatchVerdict.NotRead,
            { FirstReading: PatchReading.NotRead } => PatchVerdict.FirstReadingMissed,
            { } made when bondingAt < SecondReadingAt(made) => PatchVerdict.SecondReadingToCome,
            { SecondReading: PatchReading.Clear } => PatchVerdict.Clear,
            _ => PatchVerdict.SecondReadingMissed,
        };

    /// <summary>What a visit booked for later rests on, with what is recorded so far.</summary>
    /// <remarks>Held while the first reading still has time to be made and turn out clear before the visit.</remarks>
    public VisitFooting FootingOf(PatchTest? test, Instant visitStartsAt, LocalDate visitOn) =>
        Judge(test, visitStartsAt, visitOn) switch
        {
            PatchVerdict.NotRead => VisitFooting.Held,
            var verdict when verdict.Blocks() => VisitFooting.BackToDesk,
            _ => VisitFooting.Firm,
        };
}
