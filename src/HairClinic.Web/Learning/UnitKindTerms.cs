using HairClinic.Domain.Replacement;

namespace HairClinic.Web.Learning;

/// <summary>A kind of unit with the practice's rows for its life and its lead time.</summary>
public sealed record UnitKindTerms(
    Guid Id,
    string Name,
    Guid BaseMaterialId,
    Guid? WorkshopId,
    int LifeFromDays,
    int LifeToDays,
    int LeadHalfDays,
    int LeadNineInTenDays
)
{
    public WindowPrior Life() => WindowPrior.FromWindow(LifeDistribution.Weibull, LifeFromDays, LifeToDays);

    public LeadTimePrior Lead() => new(LeadHalfDays, LeadNineInTenDays);
}
