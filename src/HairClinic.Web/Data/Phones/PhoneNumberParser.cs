using PhoneNumbers;

namespace HairClinic.Web.Data.Phones;

/// <summary>Phone numbers as E.164: a plus, the country, the number, digits only.</summary>
public sealed class PhoneNumberParser
{
    // The library's own name for "no country": only numbers that begin with a plus can be read.
    private const string NoRegion = "ZZ";

    // Kept free for fiction by the British regulator (from memory), so the library calls them invalid. Demo clients have them.
    private static readonly string[] Fictional = ["+441632960", "+447700900"];

    private const int FictionalLength = 13;

    private static readonly PhoneNumberUtil Numbers = PhoneNumberUtil.GetInstance();

    private readonly string _region;

    /// <param name="region">Two letters (ISO 3166) of the country whose national numbers these are; empty for none.</param>
    /// <exception cref="ArgumentException">The country has no numbering plan we know.</exception>
    public PhoneNumberParser(string region)
    {
        if (region.Length > 0 && !IsKnown(region))
            throw new ArgumentException($"No numbering plan is known for the region \"{region}\".", nameof(region));
        _region = region.Length > 0 ? region : NoRegion;
    }

    /// <summary>
    /// The one rule by which numbers that name no country are read: in the country of the salon's time zone, where that lies in none in
    /// the practice's, and where that has no phone numbering in no country at all.
    /// </summary>
    /// <param name="zone">The salon's, an IANA id; null where no salon is known.</param>
    /// <param name="practice">The practice's country.</param>
    public static PhoneNumberParser ForZone(string? zone, string practice) => new(RegionForZone(zone, practice));

    /// <inheritdoc cref="ForZone"/>
    /// <returns>Two letters (ISO 3166), or empty for no country.</returns>
    public static string RegionForZone(string? zone, string practice) =>
        new[] { zone is null ? null : TimeZoneCountry.ForZone(zone), practice }.FirstOrDefault(r => r is not null && IsKnown(r)) ?? "";

    /// <param name="written">The number as E.164; empty if there is a fault.</param>
    public PhoneFault Parse(string text, out string written)
    {
        written = "";
        try
        {
            var number = Numbers.Parse(text, _region);
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

    /// <summary>A number of the region, as people there write it.</summary>
    public string Example() =>
        _region != NoRegion && Numbers.GetExampleNumber(_region) is { } example
            ? Numbers.Format(example, PhoneNumberFormat.NATIONAL)
            : "+44 20 7946 0018";

    private static bool IsKnown(string region) => Numbers.GetSupportedRegions().Contains(region);

    private static bool IsFictional(string written) =>
        written.Length == FictionalLength && Fictional.Any(range => written.StartsWith(range, StringComparison.Ordinal));
}

/// <summary>Why something typed is not taken as a phone number.</summary>
public enum PhoneFault
{
    None,
    NotANumber,
    HasExtension,
    DoesNotExist,
}
