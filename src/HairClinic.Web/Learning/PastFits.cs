namespace HairClinic.Web.Learning;

/// <summary>What the program would have known at the end of one earlier day: both models, lead times and preparation, learnt from the records as they stood.</summary>
/// <remarks>
/// The practice's rows (windows, kinds, factors, workshops with their closures, settings) are taken as they stand now: what they said then is
/// not kept. Alarms of the watch and the statistics of grades are left out.
/// </remarks>
public sealed record PastKnowledge(
    LocalDate Day,
    WearModel Hold,
    WearModel Life,
    IReadOnlyDictionary<Guid, StoredLead> Leads,
    PreparationTime Preparation
)
{
    /// <summary>Half of the units were accepted within so many days of their arrival; 0 where none is known.</summary>
    public int DaysToAccept { get; init; }
}

/// <summary>Learns from a practice's records as of each day of a schedule, one after another as the nights would have.</summary>
public sealed class PastFits(PastRecords records)
{
    private StoredFit? _hold;
    private StoredFit? _life;
    private (StoredFit? Hold, StoredFit? Life) _usable;

    /// <summary>Before anything was learnt: the practice's rows alone.</summary>
    public PastKnowledge Nothing =>
        new(
            records.FirstDay.PlusDays(-1),
            new WearModel(null, records.HoldFactors),
            new WearModel(null, records.LifeFactors),
            new Dictionary<Guid, StoredLead>(),
            PreparationTime.Fixed(records.Settings.PreparationDays)
        );

    public PastKnowledge Learn(LocalDate day)
    {
        List<HoldSpell> holds = [.. records.Holds.AsOf(day).AllSpells(day)];
        _hold = CheckedWearFit.OfHolds(holds, records.HoldFactors, _hold, DateCheckFacts.None, day, Instant.MinValue).Fit;
        var lives = records.Lives.AsOf(day);
        List<LifeSpell> spells = [.. lives.Spells(records.Kinds, day)];
        _life = CheckedWearFit.OfLives(spells, records.LifeFactors, _life, DateCheckFacts.None, day, Instant.MinValue).Fit;
        // As every night: where there is no answer, or nothing to learn from, the last one stands.
        _usable = (Usable(_hold) ?? _usable.Hold, Usable(_life) ?? _usable.Life);
        return new PastKnowledge(
            day,
            new WearModel(_usable.Hold, records.HoldFactors),
            new WearModel(_usable.Life, records.LifeFactors),
            LearnLeads(lives, day),
            LearnPreparation(lives, day)
        )
        {
            DaysToAccept = HalfAcceptedWithin(lives),
        };
    }

    private static int HalfAcceptedWithin(LifeFacts lives)
    {
        var days = lives
            .Units.Where(u => u.Dates is { ArrivedOn: not null, AcceptedOn: not null })
            .Select(u => Period.DaysBetween(u.Dates.ArrivedOn!.Value, u.Dates.AcceptedOn!.Value))
            .Order()
            .ToList();
        return days.Count == 0 ? 0 : days[days.Count / 2];
    }

    private static StoredFit? Usable(StoredFit fit) => fit is { Converged: true, Spells: > 0 } ? fit : null;

    private Dictionary<Guid, StoredLead> LearnLeads(LifeFacts lives, LocalDate day)
    {
        var ordered = lives.Units.Where(u => u.Dates.OrderedOn is not null).ToList();
        var byKind = ordered.ToLookup(u => u.UnitKindId);
        var byWorkshop = ordered.ToLookup(u => records.Kinds[u.UnitKindId].WorkshopId);
        var orders = new LeadTimeForecasts(records.Kinds, records.Workshops, new Dictionary<Guid, StoredLead>(), day);
        return records.Kinds.Values.ToDictionary(
            kind => kind.Id,
            kind =>
            {
                var lead = new StoredLead(Guid.Empty, kind.Id);
                LeadTimeRefresher.Learn(lead, kind, [.. byKind[kind.Id]], byWorkshop[kind.WorkshopId], orders, DateCheckFacts.None);
                return lead;
            }
        );
    }

    private PreparationTime LearnPreparation(LifeFacts lives, LocalDate day)
    {
        var stored = new StoredPreparation(Guid.Empty);
        PreparationRefresher.Learn(stored, lives, records.Settings.PreparationDays, day);
        return stored.UnderSetting(records.Settings.PreparationDays);
    }
}
