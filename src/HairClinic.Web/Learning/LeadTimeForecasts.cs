namespace HairClinic.Web.Learning;

/// <summary>How long orders of each kind take, with the workshops' closures and remakes; tables are made once and kept for a batch.</summary>
public sealed class LeadTimeForecasts(
    IReadOnlyDictionary<Guid, UnitKindTerms> kinds,
    IReadOnlyDictionary<Guid, Workshop> workshops,
    IReadOnlyDictionary<Guid, StoredLead> stored,
    LocalDate today
)
{
    /// <summary>The farthest day looked at.</summary>
    public const int DaysInSight = 1024;

    private readonly Dictionary<Guid, (LeadTime Lead, LeadTimeTable Table)> _leads = [];
    private readonly Dictionary<(Guid Kind, int Waited), LeadTimeTable> _waiting = [];
    private readonly Dictionary<Guid, WorkshopWorkingDays> _days = [];

    public LocalDate Today => today;

    /// <summary>For an order placed today or later.</summary>
    public LeadTimeTable LeadTimeOfNew(Guid kindId) => LeadOf(kindId).Table;

    /// <summary>Orders of the kind that arrived and that its lead time was learnt from; 0 where the practice's row stands alone.</summary>
    public int OrdersBehind(Guid kindId) => stored.GetValueOrDefault(kindId)?.Arrived.Length ?? 0;

    /// <summary>P50 and P90 of an order placed today, in calendar days with the workshop's closures.</summary>
    public (int Half, int NineInTen) UsualDays(Guid kindId) =>
        (DayOf(LeadTimeOfNew(kindId), kindId, 0.5), DayOf(LeadTimeOfNew(kindId), kindId, 0.9));

    /// <summary>What is left of an order in flight.</summary>
    public LeadTimeTable LeadTimeLeft(HairSystem unit) => LeadTimeLeft(unit.UnitKindId, unit.WaitingSince ?? today);

    /// <param name="since">The day the order went out.</param>
    public LeadTimeTable LeadTimeLeft(Guid kindId, LocalDate since)
    {
        var waited = WorkshopWorkingDays.CountBetween(since, today, ClosuresOf(kindId));
        if (_waiting.TryGetValue((kindId, waited), out var table))
            return table;
        var (rate, inspection) = RemakeOf(kindId);
        return _waiting[(kindId, waited)] = LeadTimeTable.BuildRemaining(
            LeadOf(kindId).Lead,
            waited,
            rate,
            inspection,
            LeadTime.Days,
            stored.GetValueOrDefault(kindId)?.IsLearntFrom(waited, today) ?? true
        );
    }

    /// <summary>Working days that four in five orders of a kind take, those apart that are made again.</summary>
    public (int From, int To) UsualWorkingDays(Guid kindId)
    {
        var table = LeadTimeTable.FromLeadTime(LeadOf(kindId).Lead, remakeRate: 0, inspectionDays: 0, LeadTime.Days);
        return (table.Quantile(0.1), table.Quantile(0.9));
    }

    /// <summary>Whether that many working days are believed of an order of a kind that has arrived.</summary>
    public bool IsBelieved(Guid kindId, int workingDays) => OutlyingLeads.IsWithin(LeadOf(kindId).Lead, workingDays);

    /// <summary>The days between which an order in flight will be here with 80 % chance.</summary>
    public (LocalDate Early, LocalDate Late) ArrivalRange(HairSystem unit) => DaysLeft(unit).Likely;

    /// <summary>The day by which an order in flight is here as likely as not.</summary>
    public LocalDate MedianArrival(HairSystem unit) => DaysLeft(unit).Quantile(0.5);

    /// <summary>By unit: the days between which it will be here with 80 % chance. The same for staff and client, whatever was promised.</summary>
    /// <param name="inFlight">Those that are counted on.</param>
    public Dictionary<Guid, (LocalDate Early, LocalDate Late)> ArrivalRanges(IEnumerable<HairSystem> inFlight) =>
        inFlight.ToDictionary(u => u.Id, ArrivalRange);

    public WorkshopWorkingDays WorkshopDaysOf(Guid kindId)
    {
        var workshop = kinds[kindId].WorkshopId ?? Guid.Empty;
        return _days.TryGetValue(workshop, out var known)
            ? known
            : _days[workshop] = new WorkshopWorkingDays(today, ClosuresOf(kindId), DaysInSight);
    }

    /// <summary>Working days an order has waited until a day: since it went out, or was sent back to be made again.</summary>
    public int WorkingDaysWaited(HairSystem unit, LocalDate until) =>
        WorkshopWorkingDays.CountBetween(unit.WaitingSince ?? until, until, ClosuresOf(unit.UnitKindId));

    public int WorkingDaysTaken(HairSystem unit) =>
        WorkshopWorkingDays.CountBetween(unit.Dates.OrderedOn!.Value, unit.Dates.ArrivedOn!.Value, ClosuresOf(unit.UnitKindId));

    private ArrivalForecast DaysLeft(HairSystem unit) => new(LeadTimeLeft(unit), WorkshopDaysOf(unit.UnitKindId), today, DaysInSight);

    private int DayOf(LeadTimeTable table, Guid kindId, double chance) =>
        Math.Min(WorkshopDaysOf(kindId).CalendarDayAfter(table.Quantile(chance)), DaysInSight);

    private (LeadTime Lead, LeadTimeTable Table) LeadOf(Guid kindId)
    {
        if (_leads.TryGetValue(kindId, out var known))
            return known;
        var record = stored.GetValueOrDefault(kindId);
        var prior = kinds[kindId].UsualLeadTime();
        var lead = record?.LeadTimeUnderPrior(prior) ?? LeadTime.Learn(prior, [], []);
        var (rate, inspection) = RemakeOf(kindId);
        return _leads[kindId] = (lead, LeadTimeTable.FromLeadTime(lead, rate, inspection, LeadTime.Days));
    }

    private (double Rate, int InspectionDays) RemakeOf(Guid kindId)
    {
        if (kinds[kindId].WorkshopId is not { } id || !workshops.TryGetValue(id, out var workshop))
            return (RemakeRate.Usual.Mean, 0);
        var record = stored.GetValueOrDefault(kindId);
        var rate = new RemakeRate(workshop.RemadeOfTwenty, 20 - workshop.RemadeOfTwenty).AddOutcomes(
            record?.Remade ?? 0,
            record?.Kept ?? 0
        );
        return (rate.Mean, workshop.InspectionDays);
    }

    private IEnumerable<DateInterval> ClosuresOf(Guid kindId) =>
        kinds[kindId].WorkshopId is { } id && workshops.TryGetValue(id, out var workshop) ? workshop.Closures.Select(c => c.Days) : [];
}
