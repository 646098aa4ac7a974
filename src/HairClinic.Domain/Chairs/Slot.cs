using NodaTime;

namespace HairClinic.Domain.Chairs;

/// <summary>A place for a visit.</summary>
/// <param name="FromTarget">How far the start is from the one wished for, either way.</param>
/// <param name="WithPreferred">Whether the client's preferred person does it.</param>
/// <param name="LooseEnds">
/// How far the slot chops up the day, 0 to 4: sides of the chair's and of the person's time that border neither on another
/// booking nor on the start or end of the day.
/// </param>
public sealed record Slot(
    Instant StartsAt,
    Instant EndsAt,
    Guid ChairId,
    Guid PersonId,
    Duration FromTarget,
    bool WithPreferred,
    int LooseEnds
);
