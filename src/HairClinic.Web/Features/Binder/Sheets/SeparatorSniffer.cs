using CsvHelper;

namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>Chooses the separator under which the first rows have the steadiest number of columns.</summary>
internal static class SeparatorSniffer
{
    /// <summary>The one that prose contains most often comes last: it loses a tie.</summary>
    public static readonly char[] Candidates = ['\t', ';', ','];

    private const int RowsLookedAt = 50;

    public static char Sniff(ReadOnlyMemory<byte> utf8) =>
        Announced(utf8.Span) ?? Candidates.MaxBy(separator => Steadiness(utf8, separator));

    /// <summary>Some spreadsheets write a first line <c>sep=;</c> that is not part of the table.</summary>
    public static char? Announced(ReadOnlySpan<byte> utf8) =>
        utf8.Length >= 5
        && utf8.StartsWith("sep="u8)
        && Candidates.Contains((char)utf8[4])
        && (utf8.Length == 5 || utf8[5] is (byte)'\r' or (byte)'\n')
            ? (char)utf8[4]
            : null;

    /// <summary>First the share of rows as wide as the header, then the width; a header of one column says nothing.</summary>
    private static (double Share, int Width) Steadiness(ReadOnlyMemory<byte> utf8, char separator)
    {
        using var reader = CsvReader.Create(utf8, SheetReader.Options(separator));
        if (!reader.Read() || reader.FieldCount < 2)
        {
            return (0, 0);
        }
        var width = reader.FieldCount;
        int rows = 1,
            steady = 1;
        while (rows < RowsLookedAt && reader.Read())
        {
            rows++;
            steady += reader.FieldCount == width ? 1 : 0;
        }
        return ((double)steady / rows, width);
    }
}
