using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Settings;

/// <summary>Who opened or changed what clients confided, newest first. For owners.</summary>
public sealed class AccessLog(ClinicDbFactory databases, AccessLogStore log, CurrentActor current, IClock clock)
{
    public const int Page = 50;

    public async Task<Screen> OpenAsync(Filter filter, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var rows = await RowsOf(db, filter).Take(Page + 1).ToListAsync(cancellation);
        var people = await db
            .People.AsNoTracking()
            .OrderBy(p => p.Name)
            .Select(p => new PersonChoice(p.Id, p.Name))
            .ToListAsync(cancellation);
        var home = DateTimeZoneProviders.Tzdb[await ReaderZone.ReadAsync(db, current.Person, cancellation)];
        return new Screen(
            [.. rows.Take(Page)],
            rows.Count > Page ? rows[Page - 1].Number : null,
            people,
            home,
            clock.GetCurrentInstant().InZone(home).Date
        );
    }

    /// <summary>All lines that fit, newest first, as CSV. That it was taken out is a line of the log itself.</summary>
    public async Task<byte[]> ExportCsvAsync(Filter filter, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        await using var transaction = await db.Database.BeginTransactionAsync(cancellation);
        await log.NoteAsync(db, AccessAction.ExportedAccessLog, clientId: null, cancellation: cancellation);
        var rows = await RowsOf(db, filter with { Before = null }).ToListAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return AccessLogCsv.Write(rows);
    }

    private static IQueryable<Row> RowsOf(ClinicDb db, Filter filter)
    {
        var code = filter.Code?.Trim();
        var lines = db.AccessNotes.AsNoTracking();
        if (filter.Before is { } before)
            lines = lines.Where(n => n.Number < before);
        if (filter.PersonId is { } who)
            lines = lines.Where(n => n.ActorId == who);
        if (filter.Action is { } deed)
            lines = lines.Where(n => n.Action == deed);
        if (!string.IsNullOrEmpty(code))
            lines = lines.Where(n => db.Clients.Any(c => c.Id == n.ClientId && c.Code == code));
        return from note in lines
            join person in db.People on note.ActorId equals (Guid?)person.Id into people
            from person in people.DefaultIfEmpty()
            join client in db.Clients on note.ClientId equals (Guid?)client.Id into clients
            from client in clients.DefaultIfEmpty()
            orderby note.Number descending
            select new Row(
                note.Number,
                note.At,
                note.ActorKind,
                person == null ? null : person.Name,
                note.Role,
                note.Action,
                note.ClientId,
                client == null ? null : client.Code,
                client == null ? null : client.Name,
                note.Reason
            );
    }

    /// <param name="Code">A client's code.</param>
    /// <param name="Before">The last number of the page before.</param>
    public sealed record Filter(string? Code, Guid? PersonId, AccessAction? Action, long? Before);

    public sealed record Screen(
        IReadOnlyList<Row> Rows,
        long? NextBefore,
        IReadOnlyList<PersonChoice> People,
        DateTimeZone Zone,
        LocalDate Today
    );

    public sealed record PersonChoice(Guid Id, string Name);

    /// <param name="ClientId">Stands without code and name where the client was erased.</param>
    public sealed record Row(
        long Number,
        Instant At,
        AccessActorKind Who,
        string? Person,
        string Role,
        AccessAction Action,
        Guid? ClientId,
        string? ClientCode,
        string? ClientName,
        string? Reason
    );
}
