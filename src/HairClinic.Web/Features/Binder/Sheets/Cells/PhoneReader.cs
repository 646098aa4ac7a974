using PhoneNumbers;

namespace HairClinic.Web.Features.Binder.Sheets.Cells;

/// <summary>Phone numbers as E.164: a plus, the country, the number, digits only.</summary>
public sealed class PhoneReader
{
    // The library's own name for "no country": only numbers that begin with a plus can be read.
    private const string NoRegion = "ZZ";

    private static readonly PhoneNumberUtil Numbers = PhoneNumberUtil.GetInstance();

    private readonly string region;

    /// <param name="region">Two letters (ISO 3166) of the country whose national numbers these are; empty for none.</param>
    /// <exception cref="ArgumentException">The country has no numbering plan we know.</exception>
    public PhoneReader(string region)
    {
        if (region.Length > 0 && !Numbers.GetSupportedRegions().Contains(region))
        {
            throw new ArgumentException(
                $"No numbering plan is known for the region \"{region}\".",
                nameof(region)
            );
        }
        this.region = region.Length > 0 ? region : NoRegion;
    }

    public Reading<string> Read(string text)
    {
        try
        {
            var number = Numbers.Parse(text, region);
            if (number.HasExtension)
            {
                return new Sentence("a phone number without an extension, such as {0}", Example());
            }
            return Numbers.IsValidNumber(number)
                ? Numbers.Format(number, PhoneNumberFormat.E164)
                : new Sentence("a phone number that exists, such as {0}", Example());
        }
        catch (NumberParseException)
        {
            return new Sentence("a phone number such as {0}", Example());
        }
    }

    private string Example() =>
        region != NoRegion && Numbers.GetExampleNumber(region) is { } example
            ? Numbers.Format(example, PhoneNumberFormat.INTERNATIONAL)
            : "+44 20 7946 0018";
}
