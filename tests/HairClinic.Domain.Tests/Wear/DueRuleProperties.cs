using System.Globalization;
using CsCheck;
using HairClinic.Domain.Wear;
using NodaTime;

namespace HairClinic.Domain.Tests.Wear;

public sealed class DueRuleProperties
{
    private const int Runs = 10_000;

    // What these tell moves no date by itself.
    private static readonly DueRuleName[] Aside =
    [
        DueRuleName.HoldWindow,
        DueRuleName.EventBeyondHold,
        DueRuleName.KeptAheadOfEvent,
        DueRuleName.FreshBondFallsShort,
        DueRuleName.OpensEarlyAtTarget,
        DueRuleName.MovedOutOfAbsence,
    ];

    [Fact]
    public void A_due_day_is_the_one_a_slow_second_reading_of_the_rule_finds() =>
        DueFacts.Any.Sample(
            facts => Assert.Equal(NaiveDueRule.For(facts), (facts.Answer.Opens, facts.Answer.Target, facts.Answer.DueOn)),
            iter: Runs
        );

    [Fact]
    public void Nothing_falls_due_after_its_window_closes() =>
        DueFacts.Any.Sample(
            facts =>
            {
                var due = facts.Answer;
                Assert.Equal(facts.AppliedOn.PlusWeeks(facts.LatestWeeks), due.Closes);
                Assert.True(due.DueOn <= due.Closes);
                Assert.True(due.Opens <= due.Target && due.Target <= due.Closes);
            },
            iter: Runs
        );

    [Fact]
    public void Nothing_falls_due_on_a_closed_day_or_while_the_client_is_away_unless_no_day_is_left() =>
        DueFacts.Any.Sample(
            facts => Assert.NotEqual(NaiveDueRule.Usable(facts, facts.Answer.DueOn), facts.Answer.Why.Has(DueRuleName.NoOpenDay)),
            iter: Runs
        );

    [Fact]
    public void Nothing_falls_due_before_the_cure_ends() =>
        Gen.Select(DueFacts.Any, Gen.Int[0, 22 * 60])
            .Sample(
                (facts, minute) =>
                {
                    if (!NaiveDueRule.Exists(facts.Zone, facts.AppliedOn))
                        return;
                    // Bonds are made before ten at night; later ones are covered by the visit's own check on instants.
                    var bonded = facts.AppliedOn.AtMidnight().PlusMinutes(minute).InZoneLeniently(facts.Zone).ToInstant();
                    var due = facts.Answer;
                    // A unit that has to be off comes off, cured or not.
                    if (due.IsTakeDown)
                        return;
                    var cured = new Cure(facts.CureHours).EndsAt(bonded);
                    Assert.True(due.DueOn >= cured.InZone(facts.Zone).Date);
                    if (NaiveDueRule.Exists(facts.Zone, due.DueOn))
                        Assert.True(facts.Zone.AtStartOfDay(due.DueOn).ToInstant() >= cured);
                },
                iter: Runs
            );

    [Fact]
    public void A_rebond_pulled_ahead_of_an_event_stays_ahead_of_it() =>
        DueFacts.Any.Sample(
            facts =>
            {
                var due = facts.Answer;
                if (!due.Why.Has(DueRuleName.PulledAheadOfEvent))
                    return;
                var pull = due.Why.Explain().Single(reason => reason.Rule == DueRuleName.PulledAheadOfEvent);
                Assert.True(due.DueOn <= pull.To);
                Assert.Contains(facts.Events, date => date.From == pull.To.PlusDays(pull.Amount!.Value) && date.DaysAhead == pull.Amount);
            },
            iter: Runs
        );

    [Fact]
    public void A_take_down_is_due_after_the_bond_and_before_every_event_that_it_must_be_off_for() =>
        DueFacts.Any.Sample(
            facts =>
            {
                var due = facts.Answer;
                var off = facts.Events.Where(date => date.IsTakeDown && date.Through > facts.AppliedOn).ToList();
                Assert.True(due.DueOn > facts.AppliedOn);
                // One that has begun is too late for any of them.
                if (off.TrueForAll(date => date.From > facts.AppliedOn.PlusDays(1)))
                    Assert.All(off, date => Assert.True(due.DueOn < date.From));
            },
            iter: Runs
        );

    [Fact]
    public void A_later_target_inside_the_window_never_brings_the_due_day_forward() =>
        DueFacts.Any.Sample(
            facts =>
            {
                var plain = facts with { Events = [], OpenBits = facts.OpenBits | 1 };
                LocalDate? previous = null;
                for (var days = 7 * facts.EarliestWeeks; days <= 7 * facts.LatestWeeks; days += 1)
                {
                    var due = DueRule.DueWindowFor(plain.Question with { TargetDays = days });
                    if (due.Why.Has(DueRuleName.MovedBeforeWindow) || due.Why.Has(DueRuleName.NoOpenDay))
                        return;
                    Assert.True(previous is null || due.DueOn >= previous);
                    previous = due.DueOn;
                }
            },
            iter: 500
        );

    [Fact]
    public void The_reasons_lead_from_the_day_of_application_to_the_due_day_without_a_break() =>
        DueFacts.Any.Sample(
            facts =>
            {
                var due = facts.Answer;
                var reasons = due.Why.Explain();
                Assert.All(reasons, reason => Assert.True(due.Why.Has(reason.Rule)));
                Assert.Equal(reasons.Select(reason => reason.Rule).Order(), reasons.Select(reason => reason.Rule));
                Assert.Equal(Enum.GetValues<DueRuleName>().Count(due.Why.Has), reasons.Count);
                var at = facts.AppliedOn;
                foreach (var reason in reasons)
                {
                    if (Aside.Contains(reason.Rule))
                        continue;
                    Assert.Equal(at, reason.From);
                    at = reason.To;
                }

                Assert.Equal(due.DueOn, at);
            },
            iter: Runs
        );

    [Theory]
    [InlineData("ar-SA", "Asia/Riyadh")]
    [InlineData("fa-IR", "Pacific/Apia")]
    [InlineData("th-TH", "America/Sao_Paulo")]
    [InlineData("tr-TR", "Europe/London")]
    public void The_machine_s_own_culture_and_zone_change_no_due_date(string culture, string machineZone) =>
        DueFacts
            .Any.Array[200]
            .Sample(
                book =>
                {
                    var expected = book.Select(facts => facts.Answer).ToList();
                    var (usualCulture, usualZone) = (CultureInfo.CurrentCulture, Environment.GetEnvironmentVariable("TZ"));
                    try
                    {
                        CultureInfo.CurrentCulture = new(culture);
                        SetMachineZone(machineZone);
                        var winter = new DateTime(2026, 1, 1, 0, 0, 0, DateTimeKind.Utc);
                        var offset = DateTimeZoneProviders.Tzdb[machineZone].GetUtcOffset(Instant.FromDateTimeUtc(winter));
                        Assert.Equal(offset.ToTimeSpan(), winter.ToLocalTime() - winter);
                        Assert.Equal(expected, book.Select(facts => facts.Answer));
                    }
                    finally
                    {
                        CultureInfo.CurrentCulture = usualCulture;
                        SetMachineZone(usualZone);
                    }
                },
                iter: 1,
                threads: 1
            );

    private static void SetMachineZone(string? zone)
    {
        Environment.SetEnvironmentVariable("TZ", zone);
        TimeZoneInfo.ClearCachedData();
    }

    [Fact]
    public void Salons_in_zones_that_skip_no_day_agree_on_every_due_date() =>
        DueFacts.Any.Sample(
            facts =>
            {
                var elsewhere = facts with { ZoneId = "Asia/Kolkata" };
                var here = facts with { ZoneId = "Australia/Lord_Howe" };
                Assert.Equal(elsewhere.Answer, here.Answer);
            },
            iter: 2_000
        );
}
