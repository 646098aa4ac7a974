namespace HairClinic.Domain.Practices;

public static class TextExtensions
{
    /// <summary>Trimmed; null when nothing is left.</summary>
    public static string? NullIfBlank(this string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
