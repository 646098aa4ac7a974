namespace HairClinic.Web.Features.Binder.Sheets.Cells;

/// <summary>Currencies as in ISO 4217.</summary>
public static class CurrencyCode
{
    // Every active code whose minor unit is not a hundredth; checked against a table generated from the ISO 4217 list.
    private static readonly Dictionary<string, int> Unusual = new(StringComparer.Ordinal)
    {
        ["BIF"] = 0,
        ["CLP"] = 0,
        ["DJF"] = 0,
        ["GNF"] = 0,
        ["ISK"] = 0,
        ["JPY"] = 0,
        ["KMF"] = 0,
        ["KRW"] = 0,
        ["PYG"] = 0,
        ["RWF"] = 0,
        ["UGX"] = 0,
        ["UYI"] = 0,
        ["VND"] = 0,
        ["VUV"] = 0,
        ["XAF"] = 0,
        ["XOF"] = 0,
        ["XPF"] = 0,
        ["BHD"] = 3,
        ["IQD"] = 3,
        ["JOD"] = 3,
        ["KWD"] = 3,
        ["LYD"] = 3,
        ["OMR"] = 3,
        ["TND"] = 3,
        ["CLF"] = 4,
        ["UYW"] = 4,
    };

    // Signs that many currencies share are taken for those most likely to write them; others name their currency in its column.
    private static readonly Dictionary<string, string[]> Signs = new(StringComparer.Ordinal)
    {
        ["€"] = ["EUR"],
        ["£"] = ["GBP"],
        ["¥"] = ["JPY", "CNY"],
        ["$"] = ["USD", "CAD", "AUD", "NZD", "SGD", "HKD", "MXN", "CLP", "COP", "ARS", "UYU"],
    };

    /// <summary>How many decimals an amount has.</summary>
    public static int Decimals(string currency) => Unusual.GetValueOrDefault(currency, 2);

    public static bool IsSignOf(string sign, string currency) =>
        sign == currency || (Signs.TryGetValue(sign, out var currencies) && currencies.Contains(currency));

    /// <summary>Three letters; whether such a currency is in use is not looked at.</summary>
    public static Reading<string> Read(string text)
    {
        var code = text.ToUpperInvariant();
        return code.Length == 3 && code.All(char.IsAsciiLetterUpper)
            ? code
            : new Sentence("the three letters of a currency, such as {0}", "EUR");
    }
}
