using System.Security.Cryptography;
using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Features.Binder;

/// <summary>
/// A file on its way in: what was found out about it, and what a person decided. Immutable; each decision gives a
/// new draft. It becomes an order once nothing is left to ask.
/// </summary>
public sealed record SheetDraft(Sheet Sheet, string FileHash, ColumnMapping Mapping, string Region, string Currency)
{
    /// <summary>What a person chose; null where the cells themselves settle it or nobody was asked yet.</summary>
    public DateOrder? ChosenDates { get; init; }

    public DecimalMark? ChosenMark { get; init; }

    public ConventionEvidence<DateOrder> Dates { get; } = DateOrderEvidence.From(Sheet, Mapping);

    public ConventionEvidence<DecimalMark> Marks { get; } = DecimalMarkEvidence.From(Sheet, Mapping);

    public DateOrder? DateOrder => ChosenDates ?? Dates.Settled;

    public DecimalMark? DecimalMark => ChosenMark ?? Marks.Settled;

    public bool AsksDates => Dates.Settled is null;

    public bool AsksMark => Marks.Settled is null;

    public ImportStep? Order =>
        Mapping.IsComplete && DateOrder is { } dates && DecimalMark is { } mark
            ? new ImportStep(Sheet, Mapping, new SheetConventions(dates, mark, Region, Currency))
            : null;

    public static (SheetDraft? Draft, SheetProblem? Problem) Read(SheetKind kind, ReadOnlyMemory<byte> file, string region, string currency)
    {
        var reading = SheetReader.Read(file);
        return reading.IsReadable
            ? (
                new(
                    reading.Sheet,
                    Convert.ToHexString(SHA256.HashData(file.Span)),
                    ColumnMapping.Propose(kind, reading.Sheet.Headers),
                    region,
                    currency
                ),
                null
            )
            : (null, reading.Problem);
    }

    // Not "with": what the cells say depends on which column they feed.
    public SheetDraft Mapped(ColumnMapping mapping) =>
        new(Sheet, FileHash, mapping, Region, Currency) { ChosenDates = ChosenDates, ChosenMark = ChosenMark };
}
