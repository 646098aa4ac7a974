namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>An amount that is not negative, with or without the sign or letters of its currency before or after it.</summary>
public static partial class MoneyCellParser
{
    // Well inside a long even with four decimals, and far above any price.
    private const decimal Most = 1_000_000_000_000m;

    public static CellParseResult<SheetMoney> Parse(string text, string currency, DecimalMark mark)
    {
        var match = Parts().Match(text);
        var signs = new[] { match.Groups["before"], match.Groups["after"] }.Where(sign => sign.Success);
        if (!signs.All(sign => CurrencyCellParser.IsSignOf(sign.Value, currency)))
            return new Sentence("an amount in {0}", currency);
        var reading = NumberCellParser.Parse(match.Groups["amount"].Value, mark, 0, Most);
        if (reading.Expected is { } expected)
            return expected;
        var decimals = CurrencyDigits.For(currency);
        // More decimals than the currency has mean a wrong currency or a thousands mark taken for a decimal mark.
        return reading.Value.Scale <= decimals
            ? new SheetMoney((long)(reading.Value * Power(decimals)), currency)
            : new Sentence("an amount in {0}, with at most {1} decimals", currency, decimals);
    }

    /// <summary>The amount without any sign, for looking at its decimal mark alone.</summary>
    public static string WithoutCurrency(string text) => Parts().Match(text).Groups["amount"].Value;

    private static decimal Power(int decimals) => decimals == 0 ? 1 : 10 * Power(decimals - 1);

    [GeneratedRegex(
        @"^(?:(?<before>\p{Sc}|[A-Z]{3})\s*)?(?<amount>.*?)(?:\s*(?<after>\p{Sc}|[A-Z]{3}))?\z",
        RegexOptions.CultureInvariant | RegexOptions.Singleline
    )]
    private static partial Regex Parts();
}

/// <summary>An amount in the minor unit of its currency (pence, cents, fils, whole yen), and the currency's three letters.</summary>
public readonly record struct SheetMoney(long MinorUnits, string Currency);
