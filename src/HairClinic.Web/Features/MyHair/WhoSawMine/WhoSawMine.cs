using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.MyHair;

/// <summary>A client sees who opened or changed what they confided, newest first: the person, their salon, and when.</summary>
public sealed class WhoSawMine(ClinicDbFactory databases, CurrentActor current, IClock clock)
{
    public const int Page = 30;

    /// <param name="before">The last number of the page before; null begins with the newest.</param>
    /// <returns>Null when the client is no longer there, or their address is not confirmed.</returns>
    public async Task<Screen?> OpenAsync(long? before, CancellationToken cancellation)
    {
        var client = current.Client.ClientId;
        await using var db = databases.Open();
        if (await OwnSalonReader.ZoneIfConfirmedAsync(db, client, cancellation) is not { } home)
            return null;
        // A client reads no people, and no record folded into theirs: both are looked up for them, by their own id alone.
        await using var wide = databases.OpenPracticeWide(nameof(WhoSawMine));
        var ids = await wide.Clients.Where(c => c.Id == client || c.MergedIntoId == client).Select(c => c.Id).ToListAsync(cancellation);
        var rows = await (
            from note in wide.AccessNotes.AsNoTracking()
            where note.ClientId != null && ids.Contains(note.ClientId.Value) && (before == null || note.Number < before)
            join person in wide.People on note.ActorId equals (Guid?)person.Id into people
            from person in people.DefaultIfEmpty()
            orderby note.Number descending
            select new
            {
                note.Number,
                note.At,
                note.ActorKind,
                note.Role,
                note.Action,
                Name = person == null ? null : person.Name,
                Salons = (
                    from works in wide.PersonSalons
                    where works.PersonId == note.ActorId
                    join salon in wide.Salons on works.SalonId equals salon.Id
                    orderby salon.Name
                    select salon.Name
                ).ToList(),
            }
        )
            .Take(Page + 1)
            .ToListAsync(cancellation);
        return new Screen(
            clock.GetCurrentInstant().InZone(home).Date,
            home,
            [.. rows.Take(Page).Select(r => new Row(r.At, r.ActorKind, r.Name, r.Role, r.Salons, r.Action))],
            rows.Count > Page ? rows[Page - 1].Number : null
        );
    }

    /// <param name="Zone">The home salon's.</param>
    /// <param name="NextBefore">Where the next page goes on; null when there is none.</param>
    public sealed record Screen(LocalDate Today, DateTimeZone Zone, IReadOnlyList<Row> Rows, long? NextBefore);

    /// <param name="Name">Of the person; null for the client themselves and for the program.</param>
    /// <param name="Role">At the time.</param>
    /// <param name="Salons">Where the person works; none for whoever sees all of them.</param>
    public sealed record Row(Instant At, AccessActorKind Who, string? Name, string Role, IReadOnlyList<string> Salons, AccessAction Action);
}
