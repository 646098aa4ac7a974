using HairClinic.Web.Data.Books;

namespace HairClinic.Web.Features.Visits;

/// <summary>It was not free: what is taken, and the free slots nearest to it.</summary>
public sealed record Taken(SlotClash By, IReadOnlyList<SlotOffer> Nearest)
{
    /// <summary>Where it was the client who is taken, in words.</summary>
    public Refusal? Client { get; init; }
}
