namespace HairClinic.Domain.Wear.Watch;

/// <summary>What an alarm named, as predictions read it: units (or bonds) that share a shift of their own (<see cref="CohortShift.Prior"/>).</summary>
/// <param name="AlarmId">Whose column of the fit it is.</param>
/// <param name="StreamId">The workshop's, product's or lot's id.</param>
/// <param name="Through">The last delivery that belongs to it; null while every later one does.</param>
public sealed record WatchedCohort(Guid AlarmId, Guid StreamId, LocalDate From, LocalDate? Through)
{
    /// <param name="delivered">The day a unit came, or a bond was made; null for what is still to come.</param>
    public bool Names(LocalDate? delivered) => delivered is { } on ? on >= From && !(on > Through) : Through is null;
}
