using System.Collections.Concurrent;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Wear;

namespace HairClinic.Domain.Bonding;

/// <summary>
/// Collects what the due rule needs from salon, practice, hold window, client and records, and applies it.
/// </summary>
public sealed class DueCalculator(OpeningDays opening, PracticeSettings settings, HoldWindowRule rule, Client client)
{
    // A practice has a handful of windows and each costs an integration, so what they say is kept.
    private static readonly ConcurrentDictionary<HoldWindow, HoldPrior> Priors = new();

    /// <summary>Hours the labels of the products used ask for, where they ask for more than the practice.</summary>
    public int? LabelCureHours { get; init; }

    public HoldWindow Window { get; } = new(rule.EarliestWeeks, rule.LatestWeeks);

    /// <summary>What the records up to the day of application say; null, or an answer of null, leaves the prior's target.</summary>
    public Func<LocalDate, RebondTarget?>? Learnt { get; init; }

    /// <summary>
    /// S(t) by the same records: the chance that a bond made on that day still holds so many days later. Null, or an answer of null,
    /// leaves the prior's.
    /// </summary>
    public Func<LocalDate, Func<int, double>?>? Survival { get; init; }

    /// <summary>The window's alone, for a client of a practice of which nothing is known.</summary>
    public int PriorTargetDays => Prior.TargetDays;

    private HoldPrior Prior => Priors.GetOrAdd(Window, window => new HoldPrior(window));

    public DueWindow WindowFor(LocalDate appliedOn)
    {
        var learnt = Learnt?.Invoke(appliedOn);
        return DueRule.DueWindowFor(
            new DueRuleInput(appliedOn, Window, learnt?.Days ?? PriorTargetDays, opening)
            {
                Learnt = learnt,
                PreferredWeekdays = client.PreferredDays,
                Cure = CureOf(settings, LabelCureHours),
                Events = [.. client.Events.Select(planned => ToDays(planned, appliedOn)).OfType<LifeEventDays>()],
                Survival = client.Events.Count == 0 ? null : SurvivalFrom(appliedOn),
            }
        );
    }

    public static Cure CureOf(PracticeSettings settings, int? labelCureHours) => CureOf(settings.CureHours, labelCureHours);

    /// <summary>The practice's hours of cure, or the label's where it asks for more; 24 to 48.</summary>
    public static Cure CureOf(int practiceHours, int? labelCureHours) =>
        new(Math.Clamp(Math.Max(practiceHours, labelCureHours ?? 0), Cure.ShortestHours, Cure.LongestHours));

    /// <summary>The days a salon is open, as the rule reads them.</summary>
    public static OpeningDays OpeningDaysOf(Salon salon) =>
        new(WeekdaySet.Of([.. salon.Hours.Select(h => h.Day).Distinct()]), salon.Closures.Select(c => c.Days), salon.TimeZone);

    // Read only when an event has to be judged by it.
    private Func<int, double> SurvivalFrom(LocalDate appliedOn)
    {
        var known = new Lazy<Func<int, double>?>(() => Survival?.Invoke(appliedOn));
        return days => known.Value?.Invoke(days) ?? Prior.Survival(days);
    }

    /// <returns>Null where bonding has begun again by the day of application: for this bond it is over.</returns>
    private LifeEventDays? ToDays(LifeEvent planned, LocalDate appliedOn)
    {
        var (from, to, ahead) = (planned.From, planned.To, settings.DaysBeforeEvent);
        if (planned.PausesBonding)
            return planned.BondingAgainFrom <= appliedOn ? null : LifeEventDays.OffBefore(from, to, ahead, planned.Away);
        var sound = planned.Kind == LifeEventKind.Travel ? settings.JourneySoundPercent : settings.CelebrationSoundPercent;
        return LifeEventDays.ToBeReadyFor(from, to, sound, ahead, planned.Away);
    }
}
