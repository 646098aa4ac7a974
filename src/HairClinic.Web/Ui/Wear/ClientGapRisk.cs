namespace HairClinic.Web.Ui.Wear;

/// <summary>A client whose next unit must be seen to, as the last plan has it.</summary>
/// <param name="SalonId">Their home salon.</param>
/// <param name="RebondDueOn">Of the bond on the head; null where there is none.</param>
public sealed record ClientGapRisk(
    Guid ClientId,
    Guid SalonId,
    string Code,
    string Name,
    string? CalledAs,
    string? Phone,
    ReorderPlan Plan,
    LocalDate? RebondDueOn
)
{
    /// <param name="accepted">The chance of a gap that the practice accepts.</param>
    public ReorderAdvice ReorderAdviceOn(LocalDate today, double accepted) => Plan.AdviceOn(today, RebondDueOn is not null, accepted);
}

/// <summary>A salon, and the day it is there.</summary>
public sealed record SalonToday(Guid Id, string Name, DateTimeZone Zone, LocalDate Today)
{
    public static SalonToday AsOf(Guid id, string name, string zoneId, Instant now)
    {
        var zone = DateTimeZoneProviders.Tzdb[zoneId];
        return new(id, name, zone, now.InZone(zone).Date);
    }
}
