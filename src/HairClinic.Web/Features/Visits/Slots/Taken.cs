using HairClinic.Web.Data.Books;

namespace HairClinic.Web.Features.Visits.Slots;

/// <summary>Somebody was faster: what they took, and the free slots nearest to it.</summary>
public sealed record Taken(SlotClash By, IReadOnlyList<SlotOffer> Nearest);
