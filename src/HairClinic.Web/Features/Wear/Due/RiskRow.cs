using HairClinic.Domain.Replacement;
using NodaTime;

namespace HairClinic.Web.Features.Wear;

/// <summary>One client who may lack a unit that still wears well, as the last plan has it.</summary>
public sealed record RiskRow(
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
    public OrderStanding StandingOn(LocalDate today, double accepted) => Plan.StandingOn(today, RebondDueOn is not null, accepted);

    public RiskCursor Cursor => new(Plan.ExpectedDaysWithoutHair, ClientId);
}
