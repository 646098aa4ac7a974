namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>A decimal number, its thousands grouped by the other mark, by spaces, by apostrophes or not at all.</summary>
public static partial class NumberCellParser
{
    public static CellParseResult<decimal> Parse(
        string text,
        DecimalMark mark,
        decimal least = decimal.MinValue,
        decimal most = decimal.MaxValue
    )
    {
        var match = (mark == DecimalMark.Point ? WithPoint() : WithComma()).Match(text);
        if (!match.Success)
            return new Sentence("a number such as {0}", mark == DecimalMark.Point ? "1234.5" : "1234,5");
        var plain = new StringBuilder(match.Groups["sign"].Value);
        plain.Append([.. match.Groups["whole"].Value.Where(char.IsAsciiDigit)]);
        if (match.Groups["fraction"] is { Success: true } fraction)
            plain.Append('.').Append(fraction.Value);
        const NumberStyles styles = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
        return decimal.TryParse(plain.ToString(), styles, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most
            ? number
            : new Sentence("a number from {0} to {1}", least, most);
    }

    public static CellParseResult<int> ParseWhole(string text, DecimalMark mark, decimal least, decimal most)
    {
        var reading = Parse(text, mark, Math.Max(least, int.MinValue), Math.Min(most, int.MaxValue));
        if (reading.Expected is { } expected)
            return expected;
        return decimal.IsInteger(reading.Value) ? (int)reading.Value : new Sentence("a whole number, without a fraction");
    }

    // Groups are of three, all with the same mark, and the first does not begin with 0: so 0,125 is never 125.
    [GeneratedRegex(
        @"^(?<sign>[+-]?)(?<whole>[0-9]+|[1-9][0-9]{0,2}(?:(?<group>[, \u00A0\u202F'\u2019])[0-9]{3})(?:\k<group>[0-9]{3})*)(?:\.(?<fraction>[0-9]+))?\z",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex WithPoint();

    [GeneratedRegex(
        @"^(?<sign>[+-]?)(?<whole>[0-9]+|[1-9][0-9]{0,2}(?:(?<group>[. \u00A0\u202F'\u2019])[0-9]{3})(?:\k<group>[0-9]{3})*)(?:,(?<fraction>[0-9]+))?\z",
        RegexOptions.CultureInvariant
    )]
    private static partial Regex WithComma();
}

public enum DecimalMark
{
    Point,
    Comma,
}
