using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.MyHair;

/// <summary>A client's own photos: those their salon shared with them, and no others.</summary>
public sealed class MyPhotos(ClinicDbFactory databases, PhotoStore book, AccessLogStore log, CurrentActor current, IClock clock)
{
    public const int Page = 12;

    /// <summary>That they looked is noted as it is of anybody; where nothing is shared there is nothing to look at.</summary>
    /// <param name="beforeId">The last photo of the page before; null begins with the newest.</param>
    /// <returns>Null when the client is no longer there.</returns>
    public async Task<Screen?> OpenAsync(Guid? beforeId, CancellationToken cancellation)
    {
        var client = current.Client.ClientId;
        await using var db = databases.Open();
        var shared = PhotoStore.SharedWith(db, client);
        var own = await (
            from c in db.Clients
            where c.Id == client
            join salon in db.Salons on c.HomeSalonId equals salon.Id
            select new { salon.Zone, Any = shared.Any() }
        ).SingleOrDefaultAsync(cancellation);
        if (own is null)
            return null;
        var today = clock.Today(own.Zone);
        if (!own.Any)
            return new Screen(today, [], null);
        await log.NoteAsync(db, AccessAction.OpenedPhotos, client, cancellation: cancellation);
        var rows = await shared
            .Where(p =>
                beforeId == null || shared.Any(b => b.Id == beforeId && (p.TakenOn < b.TakenOn || p.TakenOn == b.TakenOn && p.Id < b.Id))
            )
            .Take(Page + 1)
            .Select(p => new Row(p.Id, p.Kind, p.TakenOn))
            .ToListAsync(cancellation);
        return new Screen(today, [.. rows.Take(Page)], rows.Count > Page ? rows[Page - 1].Id : null);
    }

    /// <summary>One picture as WebP.</summary>
    /// <param name="part">Null for the whole picture, which is noted; the small one belongs to the page that was.</param>
    /// <returns>Null: not there, not theirs, not shared, removed or erased.</returns>
    public async Task<byte[]?> ReadPictureAsync(Guid photoId, string? part, CancellationToken cancellation)
    {
        var client = current.Client.ClientId;
        await using var db = databases.Open();
        if (await PhotoStore.SharedWith(db, client).SingleOrDefaultAsync(p => p.Id == photoId, cancellation) is not { } photo)
            return null;
        if (part is null)
            await log.NoteAsync(db, AccessAction.OpenedPhotos, client, photoId, cancellation: cancellation);
        return await book.OpenAsync(db, photo, part, cancellation);
    }

    /// <param name="NextBefore">Where the next page goes on; null when there is none.</param>
    public sealed record Screen(LocalDate Today, IReadOnlyList<Row> Rows, Guid? NextBefore);

    public sealed record Row(Guid Id, PhotoKind Kind, LocalDate TakenOn);
}
