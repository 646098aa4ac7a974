using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Photos;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Clients;

/// <summary>A client's photos: seen by those who work on them, added by those who hear their history, sealed with the client's key.</summary>
public sealed partial class Photos(
    ClinicDbFactory databases,
    WriteOnce writes,
    PhotoStore book,
    AccessLogStore log,
    CurrentActor current,
    IClock clock
)
{
    public const int Page = 24;

    /// <summary>Visits that are offered for a photo.</summary>
    public const int VisitsOffered = 12;

    /// <param name="beforeId">The last photo of the page before; null begins with the newest.</param>
    /// <param name="unitId">Only those that show this unit; null: all.</param>
    /// <returns>Null: not there, not theirs, or not for their eyes.</returns>
    public async Task<Screen?> OpenAsync(Guid clientId, Guid? beforeId, Guid? unitId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        var client = await Seen(db, clientId).Headings(db).SingleOrDefaultAsync(cancellation);
        if (client is null)
            return null;
        await log.NoteAsync(db, AccessAction.OpenedPhotos, clientId, cancellation: cancellation);
        // Ids are made in order of time, so the newest comes first and a page goes on where the last one ended.
        var rows = await (
            from photo in PhotosOf(db, clientId)
            where (beforeId == null || photo.Id < beforeId) && (unitId == null || photo.HairSystemId == unitId)
            join person in db.People on photo.AddedBy equals person.Id into people
            from person in people.DefaultIfEmpty()
            join unit in db.HairSystems on photo.HairSystemId equals unit.Id into shown
            from unit in shown.DefaultIfEmpty()
            orderby photo.Id descending
            select new
            {
                Photo = photo,
                By = person == null ? null : person.Name,
                Of = unit == null ? null : new UnitChoice(unit.Id, unit.Serial),
            }
        )
            .Take(Page + 1)
            .ToListAsync(cancellation);
        var today = clock.Today(client.Zone);
        var named = rows.Select(r => r.Photo.VisitId).OfType<Guid>().ToList();
        var taken = await Choices(db, db.Visits.Where(v => named.Contains(v.Id))).ToListAsync(cancellation);
        var units = await UnitsOf(db, clientId)
            .OrderByDescending(u => u.Id)
            .Select(u => new UnitChoice(u.Id, u.Serial))
            .ToListAsync(cancellation);
        var visits = await Choices(db, VisitsOf(db, clientId).Where(v => v.Day <= today)).Take(VisitsOffered).ToListAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return new Screen(
            client.Name,
            client.Code,
            today,
            [
                .. rows.Take(Page)
                    .Select(r => new PhotoRow(
                        r.Photo.Id,
                        r.Photo.Kind,
                        r.Photo.TakenOn,
                        r.Photo.Shared,
                        r.By,
                        r.Of,
                        taken.FirstOrDefault(v => v.Id == r.Photo.VisitId)
                    )),
            ],
            rows.Count > Page ? rows[Page - 1].Photo.Id : null,
            StaffPermissions.MayReadHealth(current.Person)
        )
        {
            Units = units,
            Visits = visits,
        };
    }

    /// <summary>One picture as WebP, for an <c>img</c> of the page that was noted.</summary>
    /// <param name="part">Null for the whole picture.</param>
    /// <returns>Null: not there, not theirs, removed or erased.</returns>
    public async Task<byte[]?> ReadPictureAsync(Guid clientId, Guid photoId, string? part, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var photo = await PhotosOf(db, clientId)
            .AsNoTracking()
            .Where(p => p.Id == photoId && Seen(db, clientId).Any())
            .SingleOrDefaultAsync(cancellation);
        if (photo is null)
            return null;
        if (part is null)
            await log.NoteAsync(db, AccessAction.OpenedPhotos, clientId, photoId, cancellation: cancellation);
        return await book.OpenAsync(db, photo, part, cancellation);
    }

    /// <exception cref="Refusal">It is no photo, the client is not theirs, or there are too many.</exception>
    public async Task<Outcome> AddAsync(Guid key, Input input, Stream file, CancellationToken cancellation)
    {
        var pressed = await PhotoCompressor.CompressAsync(file, cancellation);
        PhotoFile? kept = null;
        var saved = false;
        try
        {
            var outcome = await writes.RunAsync(
                key,
                nameof(Photos),
                input,
                async db =>
                {
                    await db.Database.BeginTransactionAsync(cancellation);
                    var zone = await MineAsync(db, input.ClientId, cancellation);
                    await log.NoteAsync(db, AccessAction.AddedPhoto, input.ClientId, key, cancellation: cancellation);
                    if (
                        await db.Photos.CountAsync(p => p.ClientId == input.ClientId && p.RemovedAt == null, cancellation)
                        >= Photo.MostPerClient
                    )
                        throw new Refusal("A client has at most {0} photos. Remove some that nobody needs.", Photo.MostPerClient);
                    kept = await book.StoreFilesAsync(db, input.ClientId, pressed, cancellation);
                    var today = clock.Today(zone);
                    // Consent to photos is asked here: where a ledger of consents is kept, this is where it is read instead.
                    var consentOn = input.Agreed ? today : throw new Refusal("Ask the client first, and say that they agreed.");
                    var photo = new Photo(
                        key,
                        input.ClientId,
                        input.Kind,
                        input.TakenOn ?? today,
                        consentOn,
                        kept,
                        current.Person.PersonId,
                        clock.GetCurrentInstant()
                    );
                    photo.SetShared(input.Share);
                    await RequireTheirsAsync(db, input, cancellation);
                    photo.SetAbout(input.UnitId, input.VisitId);
                    db.Photos.Add(photo);
                    saved = true;
                    return new Outcome(key, kept.Id);
                },
                cancellation
            );
            saved &= kept?.Id == outcome.FileId;
            return outcome;
        }
        catch
        {
            saved = false;
            throw;
        }
        finally
        {
            // A second tap or a failed save leaves no file that no row names.
            if (kept is not null && !saved)
                book.DeleteFiles(current.Person.PracticeId, kept.Id);
        }
    }

    /// <summary>The client sees it among their own, or no longer does.</summary>
    public Task SetSharedAsync(Guid clientId, Guid photoId, bool shared, CancellationToken cancellation) =>
        ChangeAsync(clientId, photoId, AccessAction.ChangedPhoto, photo => photo.SetShared(shared), cancellation);

    /// <summary>The picture goes for good; that there was one stays.</summary>
    public async Task RemoveAsync(Guid clientId, Guid photoId, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var file = await ChangeAsync(clientId, photoId, AccessAction.RemovedPhoto, photo => photo.Remove(now), cancellation);
        book.DeleteFiles(current.Person.PracticeId, file);
    }

    private async Task<Guid> ChangeAsync(
        Guid clientId,
        Guid photoId,
        AccessAction deed,
        Action<Photo> change,
        CancellationToken cancellation
    )
    {
        await using var db = databases.Open();
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        await MineAsync(db, clientId, cancellation);
        await log.NoteAsync(db, deed, clientId, photoId, cancellation: cancellation);
        var photo =
            await PhotosOf(db, clientId).SingleOrDefaultAsync(p => p.Id == photoId, cancellation)
            ?? throw new Refusal("This photo is not there any more.");
        change(photo);
        await db.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return photo.FileId;
    }

    private async Task<string> MineAsync(ClinicDb db, Guid clientId, CancellationToken cancellation)
    {
        if (!StaffPermissions.MayReadHealth(current.Person))
            throw new Refusal("Photos are added and changed by the owner, managers and stylists.");
        return await db.RequireZoneAsync(clientId, cancellation);
    }

    // Photos of records merged into this one are theirs too; each opens with the key it was sealed with.
    private static IQueryable<Photo> PhotosOf(ClinicDb db, Guid clientId) =>
        db.Photos.Where(p =>
            p.RemovedAt == null && (p.ClientId == clientId || db.Clients.Any(c => c.Id == p.ClientId && c.MergedIntoId == clientId))
        );

    private IQueryable<Client> Seen(ClinicDb db, Guid clientId)
    {
        var person = current.Person;
        var clients = db.Clients.UnmergedById(clientId);
        if (StaffPermissions.MayReadHealth(person))
            return clients;
        // A trainee sees those they work on; the desk sees none.
        return person.StaffRole == StaffRole.Trainee
            ? clients.Where(c => db.Visits.Any(v => v.ClientId == c.Id && v.PersonId == person.PersonId))
            : clients.Where(_ => false);
    }
}
