using System.Collections.Immutable;
using HairClinic.Domain.Wear;
using NodaTime;

namespace HairClinic.Benchmarks.DueWindows;

/// <summary>Due windows a second on one core, beside the bare rule in the same run.</summary>
internal static class DueWindowsBenchmark
{
    private const int Count = 2_000_000;
    private const double Goal = 5_000_000;
    private static readonly LocalDate FirstDay = new(2026, 1, 1);

    public static async Task RunAsync(Report report)
    {
        var plain = Questions(preferring: false, events: false);
        var mixed = Questions(preferring: true, events: true);
        long sink = 0;
        var times = await Rounds.ComputeAsync(
            rounds: 9,
            () => Task.FromResult(sink += Bare(plain)),
            () => Task.FromResult(sink += Rule(plain)),
            () => Task.FromResult(sink += Rule(mixed))
        );
        report.Say($"due-windows: {Count:N0} windows a round, 9 rounds, one thread; median (least – most) processor ns a window");
        string[] names = ["bare rule", "due rule, salon with closures", "due rule, also preferred days and events"];
        var medians = times.Select(t => Rounds.Median(t) * 1e6 / Count).ToList();
        for (var i = 0; i < names.Length; i++)
            report.Say(
                $"{names[i], -42} {medians[i], 7:F1} ({times[i].Min() * 1e6 / Count:F1} – {times[i].Max() * 1e6 / Count:F1})   {1e9 / medians[i], 12:N0} a second"
            );
        report.Say($"ratio to the bare rule: {medians[1] / medians[0]:F2} and {medians[2] / medians[0]:F2}");
        report.Say(
            $"goal {Goal:N0} a second: {(1e9 / medians[1] >= Goal && 1e9 / medians[2] >= Goal ? "met" : "not met")}   (sum {sink % 1000})"
        );
    }

    private static long Bare(DueRuleInput[] questions)
    {
        long sum = 0;
        for (var i = 0; i < Count; i++)
        {
            ref readonly var question = ref questions[i % questions.Length];
            var (opens, closes, due) = BareRule.WindowFor(
                question.AppliedOn,
                question.Window.EarliestWeeks,
                question.Window.LatestWeeks,
                question.TargetDays
            );
            sum += opens.Day + closes.Day + due.Day;
        }
        return sum;
    }

    private static long Rule(DueRuleInput[] questions)
    {
        long sum = 0;
        for (var i = 0; i < Count; i++)
        {
            var window = DueRule.DueWindowFor(questions[i % questions.Length]);
            sum += window.Opens.Day + window.Closes.Day + window.DueOn.Day;
        }
        return sum;
    }

    /// <summary>Ten years of days, four windows, a salon open Tuesday to Saturday with two closures a year.</summary>
    private static DueRuleInput[] Questions(bool preferring, bool events)
    {
        HoldWindow[] windows = [new(4, 6), new(2, 4), new(3, 5), new(4, 8)];
        var priors = windows.Select(w => new HoldPrior(w)).ToArray();
        var targets = priors.Select(p => p.TargetDays).ToArray();
        // The rule is measured, not the model: what the curve says is looked up.
        Func<int, double>[] curves =
        [
            .. priors
                .Select(p => Enumerable.Range(0, 400).Select(days => p.Survival(days)).ToArray())
                .Select(c => (Func<int, double>)(days => c[days])),
        ];
        var opening = new OpeningDays(
            WeekdaySet.Of(IsoDayOfWeek.Tuesday, IsoDayOfWeek.Wednesday, IsoDayOfWeek.Thursday, IsoDayOfWeek.Friday, IsoDayOfWeek.Saturday),
            Enumerable.Range(0, 22).Select(i => new DateInterval(FirstDay.PlusMonths(6 * i), FirstDay.PlusMonths(6 * i).PlusDays(3))),
            DateTimeZoneProviders.Tzdb["Europe/London"]
        );
        return
        [
            .. Enumerable
                .Range(0, 3650)
                .Select(i => new DueRuleInput(FirstDay.PlusDays(i), windows[i % 4], targets[i % 4], opening)
                {
                    PreferredWeekdays = preferring && i % 3 == 0 ? WeekdaySet.Of(IsoDayOfWeek.Friday) : default,
                    Survival = events && i % 10 == 0 ? curves[i % 4] : null,
                    Events =
                        events && i % 10 == 0 ? [LifeEventDays.SingleDay(FirstDay.PlusDays(i + 33))] : ImmutableArray<LifeEventDays>.Empty,
                }),
        ];
    }
}
