namespace HairClinic.Domain.Practices;

public static class TextExtensions
{
    /// <summary>Trimmed; null when nothing is left.</summary>
    public static string? NullIfBlank(this string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    /// <summary>A note with one more line below what it says; the line alone where it says nothing.</summary>
    public static string WithLine(this string? note, string line) => string.IsNullOrWhiteSpace(note) ? line : $"{note}\n{line}";
}
