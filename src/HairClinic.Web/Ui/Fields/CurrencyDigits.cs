using System.Globalization;

namespace HairClinic.Web.Ui.Fields;

/// <summary>How many digits a currency's amounts have after the point, as the machine's cultures have it.</summary>
public static class CurrencyDigits
{
    private static readonly Lazy<Dictionary<string, int>> Known = new(() =>
        CultureInfo
            .GetCultures(CultureTypes.SpecificCultures)
            .Select(c => (new RegionInfo(c.Name).ISOCurrencySymbol, c.NumberFormat.CurrencyDecimalDigits))
            .Where(c => c.ISOCurrencySymbol.Length == 3)
            .GroupBy(c => c.ISOCurrencySymbol)
            .ToDictionary(g => g.Key, g => g.First().CurrencyDecimalDigits)
    );

    public static int Of(string currency) => Known.Value.GetValueOrDefault(currency, 2);
}
