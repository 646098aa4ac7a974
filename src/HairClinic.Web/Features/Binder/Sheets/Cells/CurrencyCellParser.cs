namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>Currencies as in ISO 4217.</summary>
public static class CurrencyCellParser
{
    // Signs that many currencies share are taken for those most likely to write them; others name their currency in its column.
    private static readonly Dictionary<string, string[]> Signs = new(StringComparer.Ordinal)
    {
        ["€"] = ["EUR"],
        ["£"] = ["GBP"],
        ["¥"] = ["JPY", "CNY"],
        ["$"] = ["USD", "CAD", "AUD", "NZD", "SGD", "HKD", "MXN", "CLP", "COP", "ARS", "UYU"],
    };

    public static bool IsSignOf(string sign, string currency) =>
        sign == currency || (Signs.TryGetValue(sign, out var currencies) && currencies.Contains(currency));

    /// <summary>Three letters; whether such a currency is in use is not looked at.</summary>
    public static CellParseResult<string> Parse(string text)
    {
        var code = text.ToUpperInvariant();
        return code.Length == 3 && code.All(char.IsAsciiLetterUpper)
            ? code
            : new Sentence("the three letters of a currency, such as {0}", "EUR");
    }
}
