namespace HairClinic.Web.Accounts.Tablets;

/// <summary>What a PIN must be: six digits, and none of those that are tried first.</summary>
/// <remarks>
/// NIST SP 800-63B-4 (3.2.11) lets an activation secret be a number of at least six digits and advises a list of common ones. Which
/// are common: runs, one digit or two in turn, halves that repeat or mirror, dates and years. Common practice, no source.
/// </remarks>
public static class PinRule
{
    public const int Length = 6;

    public const string NotSixDigits = "A PIN has six digits.";
    public const string IsRun = "This PIN runs up or down, and is tried first. Choose six digits without a pattern.";
    public const string Repeats = "This PIN says the same again and again, and is tried first. Choose six digits without a pattern.";
    public const string IsDate = "This PIN reads as years or as a date, and is tried first. Choose six digits without a pattern.";

    /// <returns>Why it will not do; null when it will.</returns>
    public static string? Fault(string? pin)
    {
        if (pin is not { Length: Length } || !pin.All(char.IsAsciiDigit))
            return NotSixDigits;
        if (IsStep(pin, 1) || IsStep(pin, 9) || IsStep(pin[..3], 1) && IsStep(pin[3..], 1) || IsStep(pin[..3], 9) && IsStep(pin[3..], 9))
            return IsRun;
        if (
            pin.Distinct().Count() <= 2
            || pin[..3] == pin[3..]
            || pin[..2] == pin[2..4] && pin[2..4] == pin[4..]
            || pin.SequenceEqual(pin.Reverse())
        )
            return Repeats;
        if (pin[0] == pin[1] && pin[2] == pin[3] && pin[4] == pin[5])
            return Repeats;
        return IsYears(pin) || IsDay(pin[..2], pin[2..4]) && IsYearOfLife(pin[4..]) ? IsDate : null;
    }

    public static IRuleBuilderOptionsConditions<T, string> Pin<T>(this IRuleBuilder<T, string> rule) =>
        rule.Custom(
            (pin, context) =>
            {
                if (Fault(pin) is { } fault)
                    context.AddFailure(fault);
            }
        );

    private static bool IsStep(string digits, int by) =>
        digits.Zip(digits.Skip(1)).All(pair => (pair.First - '0' + by) % 10 == pair.Second - '0');

    // A year with two digits more, before or after it.
    private static bool IsYears(string pin) => pin[..2] is "19" or "20" || pin[2..4] is "19" or "20";

    private static bool IsDay(string first, string second) =>
        Number(first) is >= 1 and <= 31 && Number(second) is >= 1 and <= 12
        || Number(first) is >= 1 and <= 12 && Number(second) is >= 1 and <= 31;

    private static bool IsYearOfLife(string year) => Number(year) is >= 40 or <= 30;

    private static int Number(string digits) => int.Parse(digits, System.Globalization.CultureInfo.InvariantCulture);
}
