using HairClinic.Domain.Replacement;
using NodaTime;

namespace HairClinic.Web.Features.Wear.Due;

/// <summary>One client who could be without hair, as the last plan has it.</summary>
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
    public RiskCursor Cursor => new(Plan.ExpectedDaysWithoutHair, ClientId);
}
