namespace HairClinic.Domain.Wear;

/// <summary>Since when something has been so, in the words of somebody who cannot name the day.</summary>
public enum SinceWhen
{
    /// <summary>Two or three days ago.</summary>
    TwoOrThreeDays,
    AboutAWeek,
    NotKnown,
}

/// <summary>The days between which something began.</summary>
/// <param name="Earliest">It began after this day; half of it is within what was said.</param>
/// <param name="Latest">It had begun by this day.</param>
public readonly record struct DaysMeant(LocalDate Earliest, LocalDate Latest);

/// <summary>Which days an answer to “since when?” means. Common practice, no source.</summary>
public static class SinceWhenRule
{
    /// <remarks>
    /// Read as (earliest, latest], the middle of each answer is what was said: two and a half days, and seven. Memory of a week is good
    /// to about two days.
    /// </remarks>
    /// <param name="asked">The day on which it was asked.</param>
    /// <returns>Null: the answer says nothing.</returns>
    public static DaysMeant? DaysMeant(this SinceWhen answer, LocalDate asked) =>
        answer switch
        {
            SinceWhen.TwoOrThreeDays => new(asked.PlusDays(-3), asked.PlusDays(-2)),
            SinceWhen.AboutAWeek => new(asked.PlusDays(-9), asked.PlusDays(-5)),
            _ => null,
        };

    /// <summary>Whether it can be so of something that began no earlier than a day: a bond of yesterday did not lift a week ago.</summary>
    public static bool IsPossible(this SinceWhen answer, LocalDate asked, LocalDate? notBefore) =>
        !(answer.DaysMeant(asked)?.Latest < notBefore);
}
