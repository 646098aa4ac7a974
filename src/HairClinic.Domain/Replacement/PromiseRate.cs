namespace HairClinic.Domain.Replacement;

/// <summary>When the share of clients who never went without hair can be told: it says nothing where next to nothing of the year was seen.</summary>
public static class PromiseRate
{
    public const int FewestClients = 30;

    /// <summary>On average, of the twelve that the rate is about.</summary>
    public const int FewestMonthsEach = 3;

    private const double DaysInMonth = 365.25 / 12;

    /// <param name="clients">Of whom something was seen.</param>
    /// <param name="daysWatched">Of all of them together.</param>
    public static bool CanBeTold(int clients, int daysWatched) =>
        clients >= FewestClients && Months(daysWatched) >= FewestMonthsEach * clients;

    public static double Months(int daysWatched) => daysWatched / DaysInMonth;
}
