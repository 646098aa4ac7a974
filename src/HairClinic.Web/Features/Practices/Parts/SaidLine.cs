namespace HairClinic.Web.Features.Practices.Parts;

/// <summary>One fact of a form: its name (a key of the localiser) and what it says.</summary>
public sealed record SaidLine(string Label, string? Value);
