using HairClinic.Domain.Wear;
using NodaTime;

namespace HairClinic.Domain.Tests.Wear;

/// <summary>The due rule said a second time, slowly: whole calendars of days, filtered and sorted.</summary>
internal static class NaiveDueRule
{
    public static (LocalDate Opens, LocalDate Target, LocalDate DueOn) For(DueFacts facts)
    {
        var rebond = Rebond(facts);
        var (usual, closes, next) = (facts.AppliedOn.PlusWeeks(facts.EarliestWeeks), Closes(facts), facts.AppliedOn.PlusDays(1));
        // A rebond that would be fresher than the days ahead is not made: the unit comes off instead, before the first of all that ask for it.
        var off = facts.Events.Where(date => date.IsTakeDown && date.Through > facts.AppliedOn).ToList();
        if (!off.Exists(date => rebond.DueOn.PlusDays(date.DaysAhead) > date.From || rebond.DueOn >= date.From))
            return rebond;
        var eve = LocalDate.Min(off.Min(date => date.From).PlusDays(-1), closes);
        // Too late for the day before: as soon as anybody can.
        var due =
            eve < next
                ? Days(next, closes).Where(day => Usable(facts, day)).Append(next).First()
                : Days(next, eve).Reverse().Where(day => Usable(facts, day)).Append(eve).First();
        return (LocalDate.Min(usual, due), due, due);
    }

    /// <summary>As if nothing had to come off for good.</summary>
    private static (LocalDate Opens, LocalDate Target, LocalDate DueOn) Rebond(DueFacts facts)
    {
        var closes = Closes(facts);
        var opens = facts.AppliedOn.PlusWeeks(facts.EarliestWeeks);
        var cured = FirstClearDay(facts);
        var target = LocalDate.Max(cured, LocalDate.Min(closes, facts.AppliedOn.PlusDays(facts.TargetDays)));
        var (first, last) = ((LocalDate?)null, closes);

        var wishes = facts
            .Events.Where(date => date.Through > facts.AppliedOn && date.From.PlusDays(-date.DaysAhead) < closes)
            .Where(date => !date.IsTakeDown && Chance(facts, date.Through) < date.SoundPerMille / 1000m)
            .Select(date => (Date: date, Ready: date.From.PlusDays(-date.DaysAhead)))
            .ToList();
        var early = wishes.Where(wish => wish.Ready >= cured).Select(wish => wish.Ready).Order().ToList();
        var late = wishes
            .Where(wish => wish.Ready < cured)
            .Select(wish => LocalDate.Max(cured, wish.Date.Through.PlusDays(1)))
            .Order()
            .ToList();
        if (early.Count > 0)
            last = early[0];
        if (late.Count > 0 && (early.Count == 0 || late[0] < early[0]))
            first = target = LocalDate.Min(late[0], closes);
        target = LocalDate.Min(target, last);
        opens = LocalDate.Min(opens, target);

        var usable = Days(facts.AppliedOn, closes).Where(day => Usable(facts, day)).ToList();
        var inside = usable.Where(day => day >= (first ?? opens) && day <= last).ToList();
        var preferred = inside.Where(day => (facts.PreferredBits >> ((int)day.DayOfWeek - 1) & 1) == 1 && Apart(day, target) <= 3);
        var before = first is null ? usable.Where(day => day >= cured && day < opens).Reverse() : [];
        var due = preferred
            .OrderBy(day => Apart(day, target))
            .ThenBy(day => day)
            .Concat(inside.OrderBy(day => Apart(day, target)).ThenBy(day => day))
            .Concat(before)
            .Append(target)
            .First();
        return (opens, target, due);
    }

    private static LocalDate Closes(DueFacts facts) => facts.AppliedOn.PlusWeeks(facts.LatestWeeks);

    private static decimal Chance(DueFacts facts, LocalDate day) =>
        decimal.Round((decimal)facts.Survival(Period.DaysBetween(facts.AppliedOn, day)), 3, MidpointRounding.AwayFromZero);

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
