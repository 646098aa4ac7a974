using HairClinic.Domain.Wear.Watch;
using HairClinic.Web.Language;
using HairClinic.Web.Ui;

namespace HairClinic.Web.Features.Lasting;

/// <summary>What the watch found, in sentences that can be read aloud.</summary>
internal static class WatchWords
{
    public static string Alarm(WorkshopWatch.AlarmRow row, IStringLocalizer<Words> words) =>
        row.Alarm.Kind == WatchedStreamKind.Workshop
            ? words["Units from {0} delivered since {1} seem to last shorter", row.Name, Dates.Day(row.Alarm.CohortFrom)]
            : words["Bonds with {0} made since {1} seem to hold shorter", row.Name, Dates.Day(row.Alarm.CohortFrom)];

    public static string Advice(WatchAlarm alarm, IStringLocalizer<Words> words) =>
        alarm.Kind == WatchedStreamKind.Workshop
            ? words[
                "Found on {0} from {1} units. Ask the workshop what has changed, and order sooner for the clients below.",
                Dates.Day(alarm.RaisedOn),
                alarm.Units
            ]
            : words[
                "Found on {0} from {1} bonds. Look at what is left of it, and expect the clients below sooner.",
                Dates.Day(alarm.RaisedOn),
                alarm.Units
            ];

    /// <summary>Where a unit that an alarm names is, and since when it is here; of an adhesive's, when it was bonded.</summary>
    public static string Place(WatchedClient unit, bool ofWorkshop, LocalDate today, IStringLocalizer<Words> words) =>
        unit.On switch
        {
            null => words["on its way"],
            { } on when !ofWorkshop => words["bonded on {0}", Dates.Day(on, today)],
            { } on when unit.IsWorn => words["on the head, delivered {0}", Dates.Day(on, today)],
            { } on => words["waits, delivered {0}", Dates.Day(on, today)],
        };

    /// <summary>The deliveries an alarm names.</summary>
    public static string Cohort(WatchAlarm alarm, IStringLocalizer<Words> words) =>
        alarm.CohortThrough is { } through
            ? words["from {0} to {1}", Dates.Day(alarm.CohortFrom), Dates.Day(through)]
            : words["from {0} on", Dates.Day(alarm.CohortFrom)];

    public static string State(StoredWatch watch, IStringLocalizer<Words> words)
    {
        var (stands, limit) = (
            watch.Statistic.ToString("0.0", CultureInfo.CurrentCulture),
            watch.Limit.ToString("0.0", CultureInfo.CurrentCulture)
        );
        return watch.Statistic > watch.Limit
            ? words[
                "Above the limit: {0}, limit {1}. {2} looked at, up to {3}.",
                stands,
                limit,
                watch.Profile.Length,
                Dates.Day(watch.DataCut)
            ]
            : words[
                "Below the limit: {0}, limit {1}. {2} looked at, up to {3}.",
                stands,
                limit,
                watch.Profile.Length,
                Dates.Day(watch.DataCut)
            ];
    }
}
