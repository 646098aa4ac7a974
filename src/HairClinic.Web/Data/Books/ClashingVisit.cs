namespace HairClinic.Web.Data.Books;

/// <summary>Another visit of a client, which is in the way of one that is wanted.</summary>
/// <param name="Chair">Null where it has none, or who asks may not read it.</param>
public sealed record ClashingVisit(Instant StartsAt, Instant EndsAt, string Zone, string Salon, string? Chair)
{
    public LocalDateTime From => StartsAt.InZone(DateTimeZoneProviders.Tzdb[Zone]).LocalDateTime;

    public LocalDateTime To => EndsAt.InZone(DateTimeZoneProviders.Tzdb[Zone]).LocalDateTime;

    /// <summary>The first that shares a moment with the time; null where who asks may not see it, and then it is “busy elsewhere”.</summary>
    /// <param name="db">Opened as whoever asks: the fence decides what they see.</param>
    /// <param name="butVisit">The visit that is to be moved.</param>
    public static Task<ClashingVisit?> FindFirstAsync(
        ClinicDb db,
        Guid clientId,
        Instant from,
        Instant to,
        Guid? butVisit,
        CancellationToken cancellation
    ) =>
        db
            .Visits.Where(v => v.ClientId == clientId && v.HoldsClient && v.StartsAt < to && v.EndsAt > from && v.Id != butVisit)
            .OrderBy(v => v.StartsAt)
            .Join(
                db.Salons,
                v => v.SalonId,
                s => s.Id,
                (v, s) =>
                    new ClashingVisit(
                        v.StartsAt,
                        v.EndsAt,
                        s.Zone,
                        s.Name,
                        db.Chairs.Where(c => c.Id == v.ChairId).Select(c => c.Name).FirstOrDefault()
                    )
            )
            .FirstOrDefaultAsync(cancellation);
}
