namespace HairClinic.Web.Features.Binder.Sheets;

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
