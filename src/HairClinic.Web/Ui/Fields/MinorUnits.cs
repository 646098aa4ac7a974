namespace HairClinic.Web.Ui.Fields;

/// <summary>Amounts as people type them, to and from minor units. Anything finer than the minor unit is refused, never rounded.</summary>
public static class MinorUnits
{
    private const decimal Most = 1_000_000_000_000m;
    private const int Group = 3;
    private static readonly char[] Marks = ['.', ',', ' ', '\u00A0', '\u202F', '\'', '\u2019'];

    public static string? Write(long? minor, int decimals, CultureInfo culture) =>
        minor is { } amount ? (amount / Scale(decimals)).ToString($"F{decimals}", culture) : null;

    /// <summary>
    /// Point and comma are both taken as either mark, where what was typed can be read in one way only: 1250, 1250.00, 1 250,00 and
    /// 1,250.00. In "1.250" a mark means a thousand to some and a fraction to others, whatever is usual where the reader is: both readings are given.
    /// </summary>
    /// <param name="decimals">Digits after the point in the currency.</param>
    public static Reading Read(string typed, int decimals, CultureInfo culture)
    {
        var text = typed.Trim();
        var minus = text.StartsWith('-') || text.StartsWith(culture.NumberFormat.NegativeSign, StringComparison.Ordinal);
        if (minus)
            text = text[(text.StartsWith('-') ? 1 : culture.NumberFormat.NegativeSign.Length)..];
        var own = culture.NumberFormat.NumberDecimalSeparator;
        var marks = text.Where(c => !char.IsAsciiDigit(c)).ToList();
        if (text.Length == 0 || !char.IsAsciiDigit(text[^1]) || marks.Any(m => !Marks.Contains(m) && own != m.ToString()))
            return default;

        // At most two kinds of marks: one between groups, and once, at the end, the one before the fraction.
        var last = marks.Count == 0 ? '\0' : marks[^1];
        var groups = Grouped(text, last) ? Minor(text, last, fraction: false, minus, decimals) : null;
        var fraction = Fractioned(text, last) ? Minor(text, last, fraction: true, minus, decimals) : null;
        // Three digits after one's own mark are as the field itself writes a currency with thousandths; one without a fraction has groups only.
        if (groups is not null && fraction is not null && decimals == Group && own == last.ToString())
            groups = null;
        if (groups is not null && decimals == 0)
            fraction = null;
        var finer = groups is not null && decimals > 0 && FinerThan(text, last, decimals);
        return (groups, fraction) switch
        {
            ({ } thousands, { } part) => new Reading(null, thousands, part),
            // 12.345 of a currency with hundredths is a slip of the hand as likely as twelve thousand.
            ({ }, null) when finer => default,
            var (a, b) => new Reading(a ?? b, null, null),
        };
    }

    // 1.250 or 1 250 000: all marks are the same, the first group does not begin with 0 and the others have three digits.
    private static bool Grouped(string text, char mark)
    {
        var parts = text.Split(mark);
        return mark == '\0'
            || parts.All(p => p.All(char.IsAsciiDigit))
                && parts[0] is { Length: >= 1 and <= Group } first
                && first[0] != '0'
                && parts.Skip(1).All(p => p.Length == Group);
    }

    // 45.5 or 1,250.00: the last mark stands once, is no space, and what is before it is plain or grouped.
    private static bool Fractioned(string text, char mark)
    {
        if (mark == '\0' || char.IsWhiteSpace(mark) || mark is '\'' or '\u2019' || text.Count(c => c == mark) > 1)
            return false;
        var whole = text[..text.IndexOf(mark)];
        return whole.All(char.IsAsciiDigit) || Grouped(whole, whole.First(c => !char.IsAsciiDigit(c)));
    }

    private static bool FinerThan(string text, char mark, int decimals) =>
        Fractioned(text, mark) && text.Length - text.IndexOf(mark) - 1 > decimals;

    private static long? Minor(string text, char mark, bool fraction, bool minus, int decimals)
    {
        var plain = string.Concat(
            text.Select(c =>
                char.IsAsciiDigit(c) ? c.ToString()
                : fraction && c == mark ? "."
                : ""
            )
        );
        if (!decimal.TryParse(plain, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var amount) || amount > Most)
            return null;
        var scaled = amount * Scale(decimals) * (minus ? -1 : 1);
        return scaled == decimal.Truncate(scaled) ? (long)scaled : null;
    }

    private static decimal Scale(int decimals) => (decimal)Math.Pow(10, decimals);

    /// <summary>What an amount says, in minor units: one reading, or two, or none.</summary>
    public readonly record struct Reading(long? Only, long? Thousands, long? Fraction);
}
