namespace HairClinic.Domain.Replacement;

/// <summary>When an order in flight will be here, for whoever asks: one answer, given that it is not here today, so never a day that is past.</summary>
/// <param name="left">What is left of its lead time, as <see cref="LeadTable.InFlight"/> has it.</param>
public sealed class ArrivalDays(LeadTable left, WorkshopDays workshop, LocalDate today, int daysInSight)
{
    /// <summary>Four orders in five arrive between these.</summary>
    public (LocalDate Early, LocalDate Late) Likely => (By(0.1), By(0.9));

    /// <summary>The first day by which it is here with at least such a chance; the last in sight where none is.</summary>
    public LocalDate By(double chance) => today.PlusDays(Math.Min(workshop.DayOf(left.By(chance)), daysInSight));
}
