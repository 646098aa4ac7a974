using HairClinic.Domain.Wear;
using NodaTime;

namespace HairClinic.Domain.Tests.Wear;

/// <summary>The due rule said a second time, slowly: whole calendars of days, filtered and sorted.</summary>
internal static class NaiveDueRule
{
    public static (LocalDate Opens, LocalDate Target, LocalDate DueOn) For(DueFacts facts)
    {
        var closes = facts.AppliedOn.PlusWeeks(facts.LatestWeeks);
        var opens = facts.AppliedOn.PlusWeeks(facts.EarliestWeeks);
        var cured = FirstClearDay(facts);
        var target = LocalDate.Max(cured, LocalDate.Min(closes, facts.AppliedOn.PlusDays(facts.TargetDays)));

        var beginsInTime = LocalDate.Min(opens, target);
        var pulled = facts
            .Events.Where(date => date.From >= beginsInTime)
            .Select(date => date.From.PlusDays(-date.DaysAhead))
            .Where(latest => latest < target && latest >= cured)
            .Order()
            .ToList();
        var last = pulled.Count > 0 ? pulled[0] : closes;
        target = LocalDate.Min(target, last);
        opens = LocalDate.Min(opens, target);

        var usable = Days(facts.AppliedOn, closes).Where(day => Usable(facts, day)).ToList();
        var inside = usable.Where(day => day >= opens && day <= last).ToList();
        var preferred = inside.Where(day => (facts.PreferredBits >> ((int)day.DayOfWeek - 1) & 1) == 1 && Apart(day, target) <= 3);
        var before = usable.Where(day => day >= cured && day < opens).Reverse();
        var due = preferred
            .OrderBy(day => Apart(day, target))
            .ThenBy(day => day)
            .Concat(inside.OrderBy(day => Apart(day, target)).ThenBy(day => day))
            .Concat(before)
            .Append(target)
            .First();
        return (opens, target, due);
    }

    public static bool Exists(DateTimeZone zone, LocalDate day) => zone.MapLocally(day.At(new LocalTime(12, 0)));

    public static bool Usable(DueFacts facts, LocalDate day) =>
        IsOpen(facts, day) && !facts.Events.Any(date => date.IsAway && day >= date.From && day <= date.Through);

    public static bool IsOpen(DueFacts facts, LocalDate day) =>
        (facts.OpenBits >> ((int)day.DayOfWeek - 1) & 1) == 1
        && !facts.Closures.Any(closure => closure.Contains(day))
        && Exists(facts.Zone, day);

    public static LocalDate FirstClearDay(DueFacts facts) =>
        Days(facts.AppliedOn.PlusDays(1), facts.AppliedOn.PlusDays(9))
            .Where(day => Exists(facts.Zone, day))
            .ElementAt(facts.CureHours > 24 ? 2 : 1);

    private static bool MapLocally(this DateTimeZone zone, LocalDateTime local) => zone.MapLocal(local).Count > 0;

    private static IEnumerable<LocalDate> Days(LocalDate first, LocalDate last)
    {
        for (var day = first; day <= last; day = day.PlusDays(1))
            yield return day;
    }

    private static int Apart(LocalDate one, LocalDate other) => Math.Abs(Period.DaysBetween(one, other));
}
