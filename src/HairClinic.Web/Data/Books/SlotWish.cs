using HairClinic.Domain.Chairs;
using NodaTime;

namespace HairClinic.Web.Data.Books;

/// <summary>What a slot is wished for.</summary>
/// <param name="ServiceKindId">The skill that is needed.</param>
/// <param name="Target">The start wished for.</param>
public sealed record SlotWish(ServiceTimeline Service, Guid ServiceKindId, Instant Target)
{
    public Guid? OnlyChair { get; init; }

    public Guid? OnlyPerson { get; init; }

    /// <summary>Comes first among equals; nobody is left out for it.</summary>
    public Guid? UsualPerson { get; init; }

    public int Best { get; init; } = 6;
}
