namespace HairClinic.Web.Features.Clients;

/// <summary>Something that can be done about a gap that threatens.</summary>
/// <param name="What">The unit or units it is about; null where there is none.</param>
public sealed record Remedy(RemedyKind Kind, string? What)
{
    /// <summary>The days it takes or buys; null where none would be enough.</summary>
    public int? Days { get; init; }

    /// <summary>The chance of a gap that is left.</summary>
    public double? Then { get; init; }
}
