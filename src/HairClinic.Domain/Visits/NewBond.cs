using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using NodaTime;

namespace HairClinic.Domain.Visits;

/// <summary>The bond made at a visit, as the stylist logs it.</summary>
/// <param name="AppliedAt">When the last edge went down.</param>
/// <param name="WaitsKept">Whether each coat was left to dry.</param>
/// <param name="Emergency">The stylist confirmed a second time that an unfit unit goes on, so that nobody is left without hair.</param>
public sealed record NewBond(
    Guid Id,
    HairSystem Unit,
    Instant AppliedAt,
    Attachment Attachment,
    IReadOnlyList<(Guid Id, ProductUse Use)> Products,
    bool? WaitsKept,
    bool Emergency = false
);
