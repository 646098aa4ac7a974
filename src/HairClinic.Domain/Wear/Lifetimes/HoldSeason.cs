namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>What a season and a lot of adhesive do to holds, and when there is enough to tell.</summary>
/// <remarks>
/// The year as one wave of any height and any peak: right on either half of the earth, whatever makes summers harder there. What is assumed
/// of both before the records say better is common practice, no source.
/// </remarks>
public static class HoldSeason
{
    /// <summary>Of each part of the wave.</summary>
    public static readonly NormalPrior Prior = new(0, 0.15);

    /// <summary>Of a lot against the adhesive's others.</summary>
    public static readonly NormalPrior LotPrior = new(0, 0.2);

    /// <summary>Lifts of one lot, below which nothing is said of it.</summary>
    public const int FewestOfLot = 8;

    private const int DaysToTell = 365;

    /// <summary>Bonds over less than a year leave open whether it is the season, or the time that went by.</summary>
    public static bool CanTell(LocalDate first, LocalDate last) => Period.DaysBetween(first, last) >= DaysToTell;

    /// <summary>The day's place in the year, on a circle: cosine and sine.</summary>
    public static (double Cosine, double Sine) Of(LocalDate day)
    {
        var angle = 2 * Math.PI * (day.DayOfYear - 1) / (CalendarSystem.Iso.IsLeapYear(day.Year) ? 366 : 365);
        return (Math.Cos(angle), Math.Sin(angle));
    }
}
