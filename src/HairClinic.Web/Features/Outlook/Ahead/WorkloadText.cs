using HairClinic.Web.Ui;

namespace HairClinic.Web.Features.Outlook;

/// <summary>How numbers of this page are written.</summary>
public static class WorkloadText
{
    public static string Count(double expected) => expected.ToString("N1", CultureInfo.CurrentCulture);

    public static string MinutesAsHours(double minutes) => (minutes / 60).ToString("N0", CultureInfo.CurrentCulture);

    /// <summary>A band of minutes, in hours.</summary>
    public static string MinutesAsHours((double From, double To) minutes) => $"{MinutesAsHours(minutes.From)}–{MinutesAsHours(minutes.To)}";

    public static string Band((double From, double To) counts) => $"{Count(counts.From)}–{Count(counts.To)}";

    public static string Share(double share) => share.ToString("P1", CultureInfo.CurrentCulture);

    public static string Gaps(int number, IStringLocalizer words) => number == 1 ? words["1 gap"] : words["{0} gaps", number];

    public static string Days(int number, IStringLocalizer words) => number == 1 ? words["1 day"] : words["{0} days", number];

    /// <summary>Which week is the first that does not fit, and what is short in it.</summary>
    public static string DescribeFirstOverload(SalonLoadAndCapacity salon, IStringLocalizer words)
    {
        string name = salon.SalonId is null ? words["All salons together"] : salon.Name;
        if (salon.Clients == 0)
            return words["{0}: nobody wears hair here yet, so nothing is expected.", name];
        if (!salon.CanBeHeldAgainst)
            return words["{0}: no chairs, hours or stylists are set to hold the weeks against.", name];
        if (salon.FirstThatDoesNotFit is not { } week)
            return words["{0}: each of the {1} weeks fits.", name, salon.Load.Weeks];
        var (load, day) = (salon.Load.Week(week), Dates.Day(salon.WeekStartAtIndex(week)));
        var open = salon.ChairMinutes[week];
        if (open == 0)
            return words[
                "{0}: the week of {1} is the first that does not fit: closed, and {2} hours on chairs are expected.",
                name,
                day,
                MinutesAsHours(load.ChairMinutes)
            ];
        return load.ChairMinutes > open
            ? words[
                "{0}: the week of {1} is the first that does not fit: {2} hours on chairs expected, {3} open.",
                name,
                day,
                MinutesAsHours(load.ChairMinutes),
                MinutesAsHours(open)
            ]
            : words[
                "{0}: the week of {1} is the first that does not fit: {2} hands-on hours expected, {3} worked.",
                name,
                day,
                MinutesAsHours(load.HandsOnMinutes),
                MinutesAsHours(salon.HandsMinutes[week])
            ];
    }
}
