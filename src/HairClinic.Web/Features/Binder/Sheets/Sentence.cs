using System.Globalization;

namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>A sentence for people: the English template is also the localiser's key.</summary>
public sealed record Sentence(string Template, params object[] Arguments)
{
    public override string ToString() => string.Format(CultureInfo.InvariantCulture, Template, Arguments);
}
