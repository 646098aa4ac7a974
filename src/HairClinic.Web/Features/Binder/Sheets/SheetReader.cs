using CsvHelper;

namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>Reads the bytes of a CSV file as spreadsheets really write it. Whatever the bytes, it answers; it never throws.</summary>
public static class SheetReader
{
    public static SheetParseResult Read(ReadOnlyMemory<byte> file, SheetLimits? limits = null)
    {
        limits ??= SheetLimits.Default;
        if (file.Length > limits.Bytes)
        {
            return SheetParseResult.Refused(
                null,
                "This file has {0} bytes; at most {1} can be read. Split it into several files.",
                file.Length,
                limits.Bytes
            );
        }
        if (FileSignature.Refusal(file.Span) is { } sentence)
            return new SheetParseResult(null, new SheetProblem(null, sentence));
        return DecodedText.From(file) is { } text
            ? new SheetTextParser(text, limits).Parse()
            : SheetParseResult.Refused(null, "This file is not text. Save the sheet as CSV (comma separated values) and bring that file.");
    }

    /// <summary>Headings are checked by us, so none for the parser. Line numbers are those of the file, blank lines included.</summary>
    internal static CsvReaderOptions CsvOptions(char? separator, Action<CsvMalformedRecord>? onMalformed = null) =>
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

/// <summary>Finds out how a file's bytes spell text, and hands them on as UTF-8 without a byte order mark.</summary>
internal sealed record DecodedText(ReadOnlyMemory<byte> Utf8, SheetEncoding Encoding)
{
    // GetEncoding needs the code pages, which the framework carries but does not register.
    private static readonly Encoding Western = CodePagesEncodingProvider.Instance.GetEncoding(1252)!;

    private static readonly UTF8Encoding WithoutMark = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Null when the bytes are not text.</summary>
    public static DecodedText? From(ReadOnlyMemory<byte> file)
    {
        var bytes = file.Span;
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) && System.Text.Unicode.Utf8.IsValid(bytes[3..]))
            return Checked(file[3..], SheetEncoding.Utf8WithMark);
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]))
            return Wide(bytes[2..], bigEndian: false, SheetEncoding.Utf16LittleEndian);
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
            return Wide(bytes[2..], bigEndian: true, SheetEncoding.Utf16BigEndian);
        return System.Text.Unicode.Utf8.IsValid(bytes)
            ? Checked(file, SheetEncoding.Utf8)
            : Checked(WithoutMark.GetBytes(Western.GetString(bytes)), SheetEncoding.Windows1252);
    }

    private static DecodedText? Wide(ReadOnlySpan<byte> bytes, bool bigEndian, SheetEncoding encoding)
    {
        try
        {
            var strict = new UnicodeEncoding(bigEndian, byteOrderMark: false, throwOnInvalidBytes: true);
            return Checked(WithoutMark.GetBytes(strict.GetString(bytes)), encoding);
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
    }

    // No spreadsheet writes a NUL into text; a picture, a workbook or UTF-16 without its mark is full of them.
    private static DecodedText? Checked(ReadOnlyMemory<byte> utf8, SheetEncoding encoding) =>
        utf8.Span.Contains((byte)0) ? null : new DecodedText(utf8, encoding);
}

public enum SheetEncoding
{
    Utf8,
    Utf8WithMark,
    Utf16LittleEndian,
    Utf16BigEndian,
    Windows1252,
}

/// <summary>Recognises by their first bytes the files people most often bring by mistake.</summary>
internal static class FileSignature
{
    public static Sentence? Refusal(ReadOnlySpan<byte> file)
    {
        // A zip archive (newer workbooks are one) and the compound file of older workbooks.
        if (
            file.StartsWith((ReadOnlySpan<byte>)[0x50, 0x4B, 0x03, 0x04])
            || file.StartsWith((ReadOnlySpan<byte>)[0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1])
        )
        {
            return new Sentence(
                "This is a workbook, not a CSV file. Open it, save each sheet as CSV (comma separated values), and bring those files."
            );
        }
        return file.StartsWith("%PDF-"u8)
            ? new Sentence("This is a PDF. Bring the sheet it was made from, saved as CSV (comma separated values).")
            : null;
    }
}
