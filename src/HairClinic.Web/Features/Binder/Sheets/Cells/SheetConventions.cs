namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>What a file does not say about itself, and a person must.</summary>
/// <param name="DateOrder">How dates ending in a year are read.</param>
/// <param name="DecimalMark">What comes before the fraction of a number.</param>
/// <param name="Region">Two letters (ISO 3166): whose national phone numbers these are where a row names no salon that lies in a country.</param>
/// <param name="Currency">Three letters (ISO 4217): the currency of amounts that name none.</param>
public sealed record SheetConventions(DateOrder DateOrder, DecimalMark DecimalMark, string Region, string Currency)
{
    /// <summary>The conventions of our own round-trip export.</summary>
    public static SheetConventions Export(string region, string currency) =>
        new(DateOrder.YearMonthDay, DecimalMark.Point, region, currency);
}
