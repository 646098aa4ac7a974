using HairClinic.Domain.Replay;

namespace HairClinic.Web.Features.Lasting;

/// <summary>The sentences of the replay.</summary>
public static class ReplayWords
{
    public static readonly Of Bonds = new(
        "Too few bonds have lifted to tell: {0}. It takes {1}.",
        "{0} of bonds ended inside the 80 % band that would have been said{1}.",
        "{0} of bonds ended before the 80 % band that would have been said{1}; 10 % were to be expected."
    );

    public static readonly Of Units = new(
        "Too few units have worn out to tell: {0}. It takes {1}.",
        "{0} of units ended inside the 80 % band that would have been said{1}.",
        "{0} of units ended before the 80 % band that would have been said{1}; 10 % were to be expected."
    );

    /// <summary>Small chances are told to a tenth of a percent.</summary>
    public static string Percent(double share) =>
        share.ToString(share is > 0 and < 0.0995 ? "0.#\u00a0%" : "0\u00a0%", CultureInfo.CurrentCulture);

    /// <summary>Two standard errors to either side; nothing where one client is all there is.</summary>
    public static string Margin(double error, IStringLocalizer l) =>
        double.IsFinite(error) ? l[" (give or take {0} points)", Math.Max(1, (int)Math.Ceiling(200 * error))] : "";

    public static string Refits(PastReplayResult result, IStringLocalizer l) =>
        result.MonthsBetween == 1
            ? l["It learnt anew at the end of each month, {0} times.", result.Refits]
            : l["It learnt anew every {0} months, {1} times.", result.MonthsBetween, result.Refits];

    public static string Gaps(ReplayedGaps gaps, IStringLocalizer l) =>
        gaps.DaysWithout == 0 && gaps.DaysWithoutReplayed == 0
            ? l["Nobody was without hair, and by the program’s days nobody would have been."]
            : l[
                "{0} without hair for {1}; by the program’s days {2}, for {3}.",
                gaps.PeopleWithout == 1 ? l["1 person was"].Value : l["{0} people were", gaps.PeopleWithout].Value,
                Days(gaps.DaysWithout, l),
                gaps.PeopleWithoutReplayed,
                Days(gaps.DaysWithoutReplayed, l)
            ];

    private static string Days(int days, IStringLocalizer l) => days == 1 ? l["1 day"] : l["{0} days", days];

    /// <summary>How it is said of bonds, or of units; each a sentence that is its own key.</summary>
    public sealed record Of(string TooFew, string Inside, string Before);
}
