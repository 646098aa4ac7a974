using NodaTime;

namespace HairClinic.Web.Data.Books;

/// <summary>A chair of the salon and when it is taken.</summary>
public sealed record SlotChair(Guid Id, string Name, IReadOnlyList<Interval> Busy);
