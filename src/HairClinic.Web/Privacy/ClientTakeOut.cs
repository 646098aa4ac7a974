using System.IO.Compression;
using System.Text.Json.Nodes;
using HairClinic.Web.AccessLog;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Sealing;
using NodaTime.Text;

namespace HairClinic.Web.Privacy;

/// <summary>Everything the book holds of one client, in one archive: for a program, for a person, and what is what.</summary>
public sealed class ClientTakeOut(Sealer sealer, PhotoStore photos, AccessLogStore log, IClock clock)
{
    public const int MostRows = 50_000;
    public const long MostPhotoBytes = 500L * 1024 * 1024;

    /// <summary>Tables that hold nothing of the client's to take, and why.</summary>
    public static readonly IReadOnlyDictionary<string, string> LeftOut = new Dictionary<string, string>
    {
        ["sign_in_links"] = "A spent or running key to the client's own page: nothing about them, and no use to them.",
        ["client_sign_ins"] = "Open sign-ins of the client's own devices: no use to them.",
        ["client_keys"] = "The key under which confided things are sealed; they are handed over opened.",
        ["access_notes"] = "Names the practice's people by id; handed over as when, in which role and what.",
    };

    private static readonly JsonSerializerOptions Spaced = new()
    {
        WriteIndented = true,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <returns>How many rows there are; null: no such client, or not the caller's.</returns>
    /// <exception cref="Refusal">More than can be handed over in one archive.</exception>
    public static async Task<Contents?> PreviewAsync(ClinicDb db, Guid clientId, CancellationToken cancellation)
    {
        if (await ErasureSubject.FindAsync(db, clientId, cancellation) is not { } person)
            return null;
        var counts = new Dictionary<string, int>();
        foreach (var table in Tables(db))
        {
            var count = $"select count(*)::int as \"Value\" from {table.Name} where {table.Where}";
            var rows = await db.Database.SqlQueryRaw<int>(count, person.Ids).SingleAsync(cancellation);
            if (rows > 0)
                counts[table.Name] = rows;
        }
        if (counts.Values.Sum() > MostRows)
            throw new Refusal(
                "This record has {0} rows; at most {1} go into one archive. Ask whoever looks after the program.",
                counts.Values.Sum(),
                MostRows
            );
        var bytes = await Pictures(db, person.Ids).SumAsync(p => (long)p.Bytes, cancellation);
        if (bytes > MostPhotoBytes)
            throw new Refusal("These photos have {0} MB; at most {1} MB go into one archive.", bytes >> 20, MostPhotoBytes >> 20);
        return new(person.Kept.Id, person.Kept.Code, person.Ids, counts);
    }

    /// <summary>
    /// Notes it in the access log, then writes the archive. Rows are read before the first byte, so that a fault leaves no half
    /// of them; photos follow one by one, so that they are never all in memory.
    /// </summary>
    public async Task WriteAsync(ClinicDb db, Contents contents, Stream output, CancellationToken cancellation)
    {
        await log.NoteAsync(db, AccessAction.ExportedClient, contents.ClientId, cancellation: cancellation);
        var now = clock.GetCurrentInstant();
        var health = await HealthAsync(db, contents.Ids, cancellation);
        var json = await JsonAsync(db, contents.Ids, cancellation);
        var paper = await ClientRecordPdf.RenderAsync(db, contents.Ids, health, now, cancellation);
        if (health.Count > 0)
            json["health"] = JsonSerializer.SerializeToNode(health, JsonColumns.Options);
        var seen = await AccessLogStore.AccessesToClientAsync(db, contents.ClientId, cancellation);
        json["seen"] = JsonSerializer.SerializeToNode(seen, JsonColumns.Options);
        await using var archive = await ZipArchive.CreateAsync(output, ZipArchiveMode.Create, leaveOpen: true, Encoding.UTF8, cancellation);
        await AddAsync(archive, "README.txt", Encoding.UTF8.GetBytes(Readme), cancellation);
        await AddAsync(archive, "readable.pdf", paper, cancellation);
        await AddAsync(archive, "client.json", Encoding.UTF8.GetBytes(json.ToJsonString(Spaced)), cancellation);
        var pictures = await Pictures(db, contents.Ids).OrderBy(p => p.TakenOn).ThenBy(p => p.Id).ToListAsync(cancellation);
        foreach (var photo in pictures)
        {
            if (await photos.OpenAsync(db, photo, part: null, cancellation) is { } picture)
                await AddAsync(
                    archive,
                    $"photos/{LocalDatePattern.Iso.Format(photo.TakenOn)}-{photo.Kind}-{photo.Id:N}.webp",
                    picture,
                    cancellation
                );
        }
    }

    private static IQueryable<Photo> Pictures(ClinicDb db, Guid[] ids) =>
        db.Photos.AsNoTracking().Where(p => ids.Contains(p.ClientId) && p.RemovedAt == null);

    private async Task<IReadOnlyList<Health>> HealthAsync(ClinicDb db, Guid[] ids, CancellationToken cancellation)
    {
        var all = new List<Health>();
        var rows = await db
            .HealthAnswers.AsNoTracking()
            .Where(a => ids.Contains(a.ClientId))
            .OrderBy(a => a.SavedAt)
            .ToListAsync(cancellation);
        foreach (var row in rows)
        {
            var opened = await sealer.OpenAsync(db, row.ClientId, HealthAnswer.Purpose, row.Id, row.Closed, cancellation);
            if (opened.Bytes is { } bytes)
                all.Add(new(row.AnsweredOn, JsonSerializer.Deserialize<HealthHistory>(bytes, JsonColumns.Options)!));
        }
        return all;
    }

    public static IEnumerable<ClientTable> Tables(ClinicDb db) => ClientTables.FindAll(db.Model).Where(t => !LeftOut.ContainsKey(t.Name));

    private static async Task<JsonObject> JsonAsync(ClinicDb db, Guid[] ids, CancellationToken cancellation)
    {
        var all = new JsonObject();
        foreach (var table in Tables(db).OrderBy(t => t.Name, StringComparer.Ordinal))
        {
            // Sealed bytes are handed over opened, not as they lie in the table.
            var left = table.Columns.Where(c => c.Type == "bytea").Select(c => c.Name).Append("practice_id").Select(c => $"'{c}'");
            // Names of tables and columns come from the model, never from anybody's typing.
            var without = $"(to_jsonb({table.Name}) - array[{string.Join(", ", left)}])::text";
            var read = $"select {without} as \"Value\" from {table.Name} where {table.Where}";
            var rows = await db.Database.SqlQueryRaw<string>(read, ids).ToListAsync(cancellation);
            if (rows.Count > 0)
                all[table.Name] = new JsonArray([.. rows.Select(r => JsonNode.Parse(r))]);
        }
        return all;
    }

    private static async Task AddAsync(ZipArchive archive, string name, byte[] bytes, CancellationToken cancellation)
    {
        await using var entry = await archive.CreateEntry(name).OpenAsync(cancellation);
        await entry.WriteAsync(bytes, cancellation);
    }

    private const string Readme = """
        This is everything the practice keeps about you.

        readable.pdf   to read and to print
        client.json    the same and more, for a computer: one list for each table of the practice's book
        photos         your photos, as pictures, if there are any

        Keep these files as you would keep a letter from a doctor, and delete them where others could open them.
        If something is wrong or missing, tell the practice: you may have it put right or have your record erased.
        """;

    public sealed record Health(LocalDate On, HealthHistory Answers);

    /// <param name="Rows">How many of which table.</param>
    public sealed record Contents(Guid ClientId, string Code, Guid[] Ids, IReadOnlyDictionary<string, int> Rows);
}
