using HairClinic.Domain.Chairs;
using NodaTime;

namespace HairClinic.Web.Features.Visits;

/// <summary>Which free slots are asked for.</summary>
/// <param name="Around">The day wished for, in the salon's zone.</param>
/// <param name="WithinDays">Days either side of it.</param>
public sealed record SlotAsk(
    Guid SalonId,
    DateTimeZone Zone,
    Guid ServiceKindId,
    IReadOnlyList<ServiceSegment> Steps,
    LocalDate Around,
    int WithinDays
)
{
    /// <summary>Who comes; starts at which they have another visit are not offered.</summary>
    public Guid? ClientId { get; init; }

    public Guid? OnlyPerson { get; init; }

    public Guid? UsualPerson { get; init; }

    /// <summary>A gap that was tapped: this chair, as near to <see cref="Start"/> as can be.</summary>
    public Guid? OnlyChair { get; init; }

    public Instant? Start { get; init; }

    /// <summary>The visit that is to be moved.</summary>
    public Guid? ButVisit { get; init; }
}
