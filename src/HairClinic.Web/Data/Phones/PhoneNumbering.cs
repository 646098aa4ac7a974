using PhoneNumbers;

namespace HairClinic.Web.Data.Phones;

/// <summary>Phone numbers as E.164: a plus, the country, the number, digits only.</summary>
public sealed class PhoneNumbering
{
    // The library's own name for "no country": only numbers that begin with a plus can be read.
    private const string NoRegion = "ZZ";

    // Kept free for fiction by the British regulator (from memory), so the library calls them invalid. Demo clients have them.
    private static readonly string[] Fictional = ["+441632960", "+447700900"];

    private const int FictionalLength = 13;

    private static readonly PhoneNumberUtil Numbers = PhoneNumberUtil.GetInstance();

    private readonly string region;

    /// <param name="region">Two letters (ISO 3166) of the country whose national numbers these are; empty for none.</param>
    /// <exception cref="ArgumentException">The country has no numbering plan we know.</exception>
    public PhoneNumbering(string region)
    {
        if (region.Length > 0 && !Numbers.GetSupportedRegions().Contains(region))
            throw new ArgumentException($"No numbering plan is known for the region \"{region}\".", nameof(region));
        this.region = region.Length > 0 ? region : NoRegion;
    }

    /// <param name="written">The number as E.164; empty if there is a fault.</param>
    public PhoneFault Read(string text, out string written)
    {
        written = "";
        try
        {
            var number = Numbers.Parse(text, region);
            if (number.HasExtension)
                return PhoneFault.HasExtension;
            var formatted = Numbers.Format(number, PhoneNumberFormat.E164);
            if (!Numbers.IsValidNumber(number) && !IsFictional(formatted))
                return PhoneFault.DoesNotExist;
            written = formatted;
            return PhoneFault.None;
        }
        catch (NumberParseException)
        {
            return PhoneFault.NotANumber;
        }
    }

    /// <summary>A number of the region, to show how they are written.</summary>
    public string Example() =>
        region != NoRegion && Numbers.GetExampleNumber(region) is { } example
            ? Numbers.Format(example, PhoneNumberFormat.INTERNATIONAL)
            : "+44 20 7946 0018";

    private static bool IsFictional(string written) =>
        written.Length == FictionalLength && Fictional.Any(range => written.StartsWith(range, StringComparison.Ordinal));
}
