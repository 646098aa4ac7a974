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
        if (await OwnSalon.ConfirmedZoneAsync(db, client, cancellation) is not { } home)
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
                note.Deed,
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
            [.. rows.Take(Page).Select(r => new Row(r.At, r.ActorKind, r.Name, r.Role, r.Salons, r.Deed))],
            rows.Count > Page ? rows[Page - 1].Number : null
        );
    }

    /// <param name="Zone">The home salon's.</param>
    /// <param name="NextBefore">Where the next page goes on; null when there is none.</param>
    public sealed record Screen(LocalDate Today, DateTimeZone Zone, IReadOnlyList<Row> Rows, long? NextBefore);

    /// <param name="Name">Of the person; null for the client themselves and for the program.</param>
    /// <param name="Role">At the time.</param>
    /// <param name="Salons">Where the person works; none for whoever sees all of them.</param>
    public sealed record Row(Instant At, AccessActorKind Who, string? Name, string Role, IReadOnlyList<string> Salons, AccessDeed Deed);
}

/// <summary>Lines of the access log as the client they are about reads them. The localiser's keys.</summary>
public static class OwnSeenText
{
    public static string Of(AccessDeed deed) =>
        deed switch
        {
            AccessDeed.OpenedHealth => "Looked at your health answers",
            AccessDeed.SavedHealth => "Wrote down your health answers",
            AccessDeed.OpenedPhotos => "Looked at your photos",
            AccessDeed.AddedPhoto => "Added a photo of you",
            AccessDeed.ChangedPhoto => "Shared a photo with you, or took it back",
            AccessDeed.RemovedPhoto => "Removed a photo of you",
            AccessDeed.OpenedPapers => "Opened your papers",
            AccessDeed.ExportedClient => "Took out all that is kept about you",
            AccessDeed.OpenedCardByGrant => "Opened your record, having been let in",
            AccessDeed.GrantedSalon => "Let another salon see your record",
            AccessDeed.EndedGrant => "Ended what another salon could see",
            AccessDeed.Transferred => "Moved you to another salon",
            AccessDeed.ChangedOpeningAddress => "Changed the e-mail address that opens your pages, or who looks after you",
            AccessDeed.ConfirmedOpeningAddress => "Confirmed an e-mail address that opens your pages",
            AccessDeed.DeniedOpeningAddress => "Said that a new e-mail address is not yours",
            _ => "Did something that concerns you",
        };

    /// <summary>What somebody is in the practice.</summary>
    public static string OfRole(string role) =>
        role switch
        {
            nameof(StaffRole.Owner) => "runs the practice",
            nameof(StaffRole.Manager) => "manages the salon",
            nameof(StaffRole.FrontDesk) => "at the desk",
            nameof(StaffRole.Stylist) => "stylist",
            _ => "in training",
        };
}
