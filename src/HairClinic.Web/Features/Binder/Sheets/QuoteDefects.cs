namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>What is wrong with the quotes of one record.</summary>
/// <remarks>The parser names only the first defect of a record, and a stray quote, which does no harm, may hide a worse one.</remarks>
/// <param name="TextAfterClosingQuote">A quoted cell goes on after its closing quote.</param>
/// <param name="UnclosedSince">The line on which a quote opened that is never closed, or null.</param>
internal sealed record QuoteDefects(bool TextAfterClosingQuote, int? UnclosedSince)
{
    private enum Place
    {
        CellStart,
        Plain,
        Quoted,
        AfterQuote,
    }

    /// <param name="record">The record as it stands in the file, without its line end.</param>
    /// <param name="separator">The separator of the file.</param>
    /// <param name="firstLine">The line on which the record starts.</param>
    public static QuoteDefects Find(ReadOnlySpan<byte> record, char separator, int firstLine)
    {
        var line = firstLine;
        var opened = firstLine;
        var place = Place.CellStart;
        var textAfter = false;
        for (var at = 0; at < record.Length; at++)
        {
            var character = record[at];
            if (place == Place.CellStart && character == '"')
            {
                opened = line;
            }
            textAfter |= place == Place.AfterQuote && character != '"' && character != separator;
            place = (place, character) switch
            {
                (Place.CellStart, (byte)'"') => Place.Quoted,
                (Place.Quoted, (byte)'"') => Place.AfterQuote,
                (Place.Quoted, _) => Place.Quoted,
                (Place.AfterQuote, (byte)'"') => Place.Quoted,
                _ => character == separator ? Place.CellStart : Place.Plain,
            };
            var pair = character == '\r' && at + 1 < record.Length && record[at + 1] == '\n';
            line += character == '\n' || (character == '\r' && !pair) ? 1 : 0;
        }
        return new QuoteDefects(textAfter, place == Place.Quoted ? opened : null);
    }
}
