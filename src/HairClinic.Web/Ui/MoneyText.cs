using HairClinic.Domain.Money;
using HairClinic.Web.Ui.Fields;

namespace HairClinic.Web.Ui;

/// <summary>An amount as the reader writes it.</summary>
public static class MoneyText
{
    /// <param name="minor">Minor units of the currency.</param>
    public static string Of(long minor, string currency) =>
        $"{MinorUnits.Write(minor, CurrencyDigits.For(currency), CultureInfo.CurrentCulture)} {currency}";
}
