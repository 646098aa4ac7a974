namespace HairClinic.Web.Learning;

/// <summary>What is expected of a client's units, for the right side of the wear line.</summary>
/// <param name="Left">By unit in hand: how long it lasts, and what it was worn already.</param>
/// <param name="Arrivals">By unit in flight: the days between which it will be here with 80 % chance.</param>
public sealed record WearAhead(
    IReadOnlyDictionary<Guid, (LifePrediction Life, int WornDays)> Left,
    IReadOnlyDictionary<Guid, (LocalDate Early, LocalDate Late)> Arrivals,
    LocalDate? ReorderBy,
    WearGap? Gap
)
{
    public static readonly WearAhead Unknown = new(
        new Dictionary<Guid, (LifePrediction, int)>(),
        new Dictionary<Guid, (LocalDate, LocalDate)>(),
        null,
        null
    );
}
