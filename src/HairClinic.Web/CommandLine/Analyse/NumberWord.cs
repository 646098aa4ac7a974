namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>A word as a number: one that is none, or that a double cannot hold, is never taken for another.</summary>
public static class NumberWord
{
    /// <summary>What it says of a word that is no number at all: it may be the name of a kind.</summary>
    public const string NoNumber = "no number";

    /// <summary>The number; null where there is none.</summary>
    public static double? Parse(string word) => TryParse(word, out var number, out _) ? number : null;

    /// <param name="why">What the word is instead, for a sentence.</param>
    public static bool TryParse(string word, out double number, out string why)
    {
        why = NoNumber;
        if (!double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out number) || double.IsNaN(number))
            return false;
        // Words for infinity have no digits; numbers beyond the largest have.
        if (double.IsInfinity(number))
        {
            why = word.Any(char.IsAsciiDigit) ? "too large a number" : NoNumber;
            return false;
        }
        if (number != 0 || !word.TakeWhile(c => c is not ('e' or 'E')).Any(c => c is >= '1' and <= '9'))
            return true;
        why = "too small a number";
        return false;
    }
}
