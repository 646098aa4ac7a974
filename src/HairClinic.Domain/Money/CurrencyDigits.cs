namespace HairClinic.Domain.Money;

/// <summary>How many digits a currency's amounts have after the point: the minor units of ISO 4217.</summary>
public static class CurrencyDigits
{
    private const int Usual = 2;

    // Every active code whose minor unit is not a hundredth. The platform's cultures differ for some: they drop digits that are no longer coined.
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

    /// <param name="currency">Three letters (ISO 4217); an unknown one has hundredths, as most have.</param>
    public static int For(string currency) => Unusual.GetValueOrDefault(currency, Usual);
}
