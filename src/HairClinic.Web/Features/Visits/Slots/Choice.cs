namespace HairClinic.Web.Features.Visits;

/// <summary>A chair or a person to choose.</summary>
public sealed record Choice(Guid Id, string Name);
