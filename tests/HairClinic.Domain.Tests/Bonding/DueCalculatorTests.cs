using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Tests.Wear;
using HairClinic.Domain.Wear;
using NodaTime;

namespace HairClinic.Domain.Tests.Bonding;

/// <summary>What of label, practice, client and records reaches the rule on due dates.</summary>
public sealed class DueWindowCalculatorTests
{
    private static readonly LocalDate AppliedOn = new(2027, 2, 3);

    [Theory]
    [InlineData(24, null, 24)]
    [InlineData(24, 12, 24)]
    [InlineData(24, 48, 48)]
    [InlineData(36, 30, 36)]
    [InlineData(36, null, 36)]
    // Beyond two days nobody can keep dry: the caution on the label stays, the clock does not run on.
    [InlineData(24, 72, 48)]
    public void A_cure_lasts_as_long_as_the_practice_or_the_label_asks_whichever_is_longer(int practice, int? label, int hours) =>
        Assert.Equal(hours, DueCalculator.CureOf(practice, label).Hours);

    [Theory]
    [InlineData(null, 2)]
    [InlineData(24, 2)]
    [InlineData(48, 3)]
    public void The_labels_hours_of_cure_keep_the_first_day_a_bond_may_fall_due(int? label, int days)
    {
        // The records of this client say that nothing holds longer than a day.
        var window = Basis(label, learnt: 1).WindowFor(AppliedOn);

        Assert.Equal(AppliedOn.PlusDays(days), window.DueOn);
        Assert.Contains(window.Why.Explain(), r => r.Rule == DueRuleName.HeldUntilCured);
    }

    [Fact]
    public void What_was_learnt_up_to_that_day_is_aimed_at_and_else_the_windows_own_target()
    {
        LocalDate? asked = null;
        var basis = new DueCalculator(Open, Settings(), FourToEight, Ada())
        {
            Learnt = day =>
            {
                asked = day;
                return new RebondTarget(33, OwnBonds: 2, UnknownDays: 0);
            },
        };

        Assert.Equal(AppliedOn.PlusDays(33), basis.WindowFor(AppliedOn).Target);
        Assert.Equal(AppliedOn, asked);
        Assert.Equal(
            AppliedOn.PlusDays(new HoldPrior(new HoldWindow(4, 8)).TargetDays),
            Basis(null, learnt: null).WindowFor(AppliedOn).Target
        );
    }

    [Fact]
    public void The_practices_days_before_an_event_pull_it_ahead()
    {
        var wedding = Planning(LifeEventKind.Celebration, 32, 32);

        Assert.Equal(AppliedOn.PlusDays(28), DueOf(wedding, Settings(daysBeforeEvent: 4)));
        Assert.Equal(AppliedOn.PlusDays(23), DueOf(wedding, Settings(daysBeforeEvent: 9)));
    }

    // Worked example of the 4–8-week window: S(27) = 0.917, S(40) = 0.546.
    [Theory]
    [InlineData(LifeEventKind.Celebration, 27, 27, 22)]
    [InlineData(LifeEventKind.Other, 27, 27, 22)]
    [InlineData(LifeEventKind.Travel, 27, 27, 33)]
    [InlineData(LifeEventKind.Travel, 20, 40, 15)]
    [InlineData(LifeEventKind.Operation, 27, 27, 26)]
    [InlineData(LifeEventKind.Scan, 27, 27, 26)]
    [InlineData(LifeEventKind.Treatment, 27, 90, 26)]
    public void Each_kind_asks_for_its_own(LifeEventKind kind, int from, int to, int due) =>
        Assert.Equal(AppliedOn.PlusDays(due), DueOf(Planning(kind, from, to), Settings()));

    [Fact]
    public void How_sound_a_bond_must_be_is_the_practices_to_say()
    {
        var settings = Settings();
        settings.SetEventRule(91, 92);

        Assert.Equal(AppliedOn.PlusDays(33), DueOf(Planning(LifeEventKind.Celebration, 27, 27), settings));
        Assert.Equal(AppliedOn.PlusDays(22), DueOf(Planning(LifeEventKind.Travel, 27, 27), settings));
    }

    [Fact]
    public void How_the_clients_bonds_hold_is_what_an_event_is_judged_by_and_read_only_for_one()
    {
        var asked = new List<LocalDate>();
        Assert.Equal(22, Days(0.95, Planning(LifeEventKind.Celebration, 27, 27)));
        Assert.Equal(33, Days(0.999, Planning(LifeEventKind.Celebration, 27, 27)));
        Assert.Equal([AppliedOn, AppliedOn], asked);
        Assert.Equal(33, Days(0.1, Ada()));
        Assert.Equal(33, Days(0.1, Planning(LifeEventKind.Celebration, 200, 200)));
        Assert.Equal([AppliedOn, AppliedOn], asked);

        int Days(double chance, Client client) =>
            Period.DaysBetween(
                AppliedOn,
                new DueCalculator(Open, Settings(), FourToEight, client)
                {
                    Learnt = At(33),
                    Survival = day =>
                    {
                        asked.Add(day);
                        return _ => chance;
                    },
                }
                    .WindowFor(AppliedOn)
                    .DueOn
            );
    }

    [Theory]
    [InlineData(0, 33)]
    [InlineData(1, 1)]
    public void An_operation_after_which_bonding_began_again_asks_nothing_of_a_later_bond(int againAfterDays, int due)
    {
        var client = Planning(LifeEventKind.Operation, -3, 20);
        client.Events[0].AllowBondingAgain(AppliedOn.PlusDays(againAfterDays), by: null);

        Assert.Equal(AppliedOn.PlusDays(due), DueOf(client, Settings()));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Only_while_they_are_away_a_client_cannot_come(bool away)
    {
        var client = Planning(LifeEventKind.Travel, 10, 40, away);
        var (from, to) = (AppliedOn.PlusDays(10), AppliedOn.PlusDays(40));

        var due = new DueCalculator(Open, Settings(), FourToEight, client) { Learnt = At(33), Survival = _ => _ => 0.95 }
            .WindowFor(AppliedOn)
            .DueOn;

        Assert.Equal(away, due < from || due > to);
    }

    [Fact]
    public void The_clients_days_are_preferred()
    {
        var client = Ada();
        client.SetPreferences(WeekdaySet.Of(IsoDayOfWeek.Thursday), null);

        Assert.Equal(
            IsoDayOfWeek.Thursday,
            new DueCalculator(Open, Settings(), FourToEight, client) { Learnt = At(33) }
                .WindowFor(AppliedOn)
                .DueOn.DayOfWeek
        );
    }

    [Fact]
    public void A_salon_is_open_on_the_weekdays_it_has_hours_for_but_for_its_closures()
    {
        var salon = new Salon(Guid.CreateVersion7(), "Elm Row", "Europe/London", "GBP");
        salon.SetHours(IsoDayOfWeek.Wednesday, [(Guid.CreateVersion7(), new LocalTime(9, 0), new LocalTime(17, 0))]);
        salon.AddClosure(Guid.CreateVersion7(), AppliedOn.PlusDays(7), AppliedOn.PlusDays(7), "Painters");
        var open = DueCalculator.OpeningDaysOf(salon);

        Assert.Equal([true, false, false, true], new[] { 0, 1, 7, 14 }.Select(d => open.IsOpen(AppliedOn.PlusDays(d))));
    }

    private static OpeningDays Open => Salons.OpenDaily("Europe/London");

    private static HoldWindowRule FourToEight => new(Guid.CreateVersion7(), 4, 8);

    private static Func<LocalDate, RebondTarget?> At(int days) => _ => new RebondTarget(days, OwnBonds: 2, UnknownDays: 0);

    private static DueCalculator Basis(int? label, int? learnt) =>
        new(Open, Settings(), FourToEight, Ada()) { LabelCureHours = label, Learnt = learnt is { } days ? At(days) : null };

    private static PracticeSettings Settings(int daysBeforeEvent = 5)
    {
        var settings = new PracticeSettings(Guid.CreateVersion7(), "Practice", "GB", "en-GB");
        settings.SetSchedulingRules(24, daysBeforeEvent, 7, 15);
        return settings;
    }

    private static Client Planning(LifeEventKind kind, int from, int to, bool away = false)
    {
        var client = Ada();
        client.AddLifeEvent(new LifeEvent(Guid.CreateVersion7(), client.Id, kind, AppliedOn.PlusDays(from), AppliedOn.PlusDays(to), away));
        return client;
    }

    private static LocalDate DueOf(Client client, PracticeSettings settings) =>
        new DueCalculator(Open, settings, FourToEight, client) { Learnt = At(33) }
            .WindowFor(AppliedOn)
            .DueOn;

    private static Client Ada() => new(Guid.CreateVersion7(), "C-1", "Ada Fenwick", Guid.CreateVersion7());
}
