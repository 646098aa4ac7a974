using System.Globalization;

namespace HairClinic.Web.Ui.Fields;

/// <summary>Amounts as people type them, to and from minor units. Anything finer than the minor unit is refused, never rounded.</summary>
public static class MinorUnits
{
    private const NumberStyles Accepted =
        NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite;

    public static string? Write(long? minor, int decimals, CultureInfo culture) =>
        minor is { } amount ? (amount / Scale(decimals)).ToString($"F{decimals}", culture) : null;

    /// <summary>Group separators are not accepted: in "1.250" a point means a thousand to some and a fraction to others.</summary>
    public static bool TryRead(string typed, int decimals, CultureInfo culture, out long minor)
    {
        minor = 0;
        if (
            !decimal.TryParse(typed, Accepted, culture, out var amount)
            && !decimal.TryParse(typed, Accepted, CultureInfo.InvariantCulture, out amount)
        )
            return false;
        if (Math.Abs(amount) > 1_000_000_000_000m)
            return false;
        var scaled = amount * Scale(decimals);
        minor = (long)scaled;
        return minor == scaled;
    }

    private static decimal Scale(int decimals) => (decimal)Math.Pow(10, decimals);
}
