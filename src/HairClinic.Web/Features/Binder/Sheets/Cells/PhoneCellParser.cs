using HairClinic.Web.Data.Phones;

namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>Phone numbers as E.164: a plus, the country, the number, digits only.</summary>
/// <param name="region">Two letters (ISO 3166) of the country whose national numbers these are; empty for none.</param>
/// <exception cref="ArgumentException">The country has no numbering plan we know.</exception>
public sealed class PhoneCellParser(string region)
{
    private readonly PhoneNumberParser _numbering = new(region);

    public CellParseResult<string> Parse(string text) =>
        _numbering.Parse(text, out var written) switch
        {
            PhoneFault.None => written,
            PhoneFault.HasExtension => new Sentence("a phone number without an extension, such as {0}", _numbering.Example()),
            PhoneFault.DoesNotExist => new Sentence("a phone number that exists, such as {0}", _numbering.Example()),
            _ => new Sentence("a phone number such as {0}", _numbering.Example()),
        };
}
