using CsvHelper;

namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>Reads the bytes of a CSV file as spreadsheets really write it. Whatever the bytes, it answers; it never throws.</summary>
public static class SheetReader
{
    public static SheetReading Read(ReadOnlyMemory<byte> file, SheetLimits? limits = null)
    {
        limits ??= SheetLimits.Default;
        if (file.Length > limits.Bytes)
        {
            return SheetReading.Refused(
                null,
                "This file has {0} bytes; at most {1} can be read. Split it into several files.",
                file.Length,
                limits.Bytes
            );
        }
        if (FileSignature.Refusal(file.Span) is { } sentence)
            return new SheetReading(null, new SheetProblem(null, sentence));
        return SheetText.From(file) is { } text
            ? new SheetPass(text, limits).Read()
            : SheetReading.Refused(null, "This file is not text. Save the sheet as CSV (comma separated values) and bring that file.");
    }

    /// <summary>Headings are checked by us, so none for the parser. Line numbers are those of the file, blank lines included.</summary>
    internal static CsvReaderOptions Options(char? separator, Action<CsvMalformedRecord>? onMalformed = null) =>
        new()
        {
            Separator = separator,
            DetectSeparatorHint = separator is null,
            HasHeader = false,
            TrackLineNumbers = true,
            OnMalformedRecord = onMalformed,
        };
}

public sealed record SheetLimits(int Bytes = 20 * 1024 * 1024, int Rows = 200_000, int Columns = 500)
{
    public static SheetLimits Default { get; } = new();
}
