namespace HairClinic.Web.Ui.Fields;

/// <summary>One thing that can be chosen: what it is called, and a second line that tells it from its namesakes.</summary>
public sealed record ComboOption(string Key, string Text, string? Detail = null);
