using System.Text.Json.Serialization;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Maps;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Learning;

/// <summary>Answers to questions about the whole book: worked out each night as whoever may ask, read as they were kept.</summary>
public static class PageResultStore
{
    private static readonly JsonSerializerOptions Json = new(JsonColumns.Options)
    {
        // What follows from the rest follows again, and what is not a number is kept as such.
        IgnoreReadOnlyProperties = true,
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
    };

    /// <summary>What is kept; worked out where nothing is, and kept too once a night's run was done: before the first the book still grows.</summary>
    public static async Task<T> GetOrComputeAsync<T>(
        ClinicDb db,
        PersonActor reader,
        string question,
        Func<Task<T>> workOut,
        CancellationToken cancellation
    )
    {
        var salons = SalonsOf(reader);
        if (await FindTextAsync(db.StoredPageResults.Where(a => a.Salons == salons), question, cancellation) is { } kept)
            return JsonSerializer.Deserialize<T>(kept, Json)!;
        var answer = await workOut();
        // Whoever works nowhere yet sees nothing of any salon: there is nothing to keep, and the database keeps it for owners alone.
        var mayKeep = reader.StaffRole == StaffRole.Owner || salons.Length > 0;
        if (mayKeep && await RecalculationQueue.FindLastDoneAsync(db, cancellation) is not null)
            await StoreAsync(db, reader, question, answer, cancellation);
        return answer;
    }

    /// <summary>What is kept for the reader; null where nothing is.</summary>
    public static async Task<T?> FindAsync<T>(ClinicDb db, PersonActor reader, string question, CancellationToken cancellation)
        where T : class
    {
        var salons = SalonsOf(reader);
        return Read<T>(await FindTextAsync(db.StoredPageResults.Where(a => a.Salons == salons), question, cancellation));
    }

    /// <summary>The newest that is kept for anybody; null where nothing is.</summary>
    public static async Task<T?> FindNewestAsync<T>(ClinicDb db, string question, CancellationToken cancellation)
        where T : class => Read<T>(await FindTextAsync(db.StoredPageResults, question, cancellation));

    private static Task<string?> FindTextAsync(IQueryable<StoredPageResult> among, string question, CancellationToken cancellation) =>
        among
            .AsNoTracking()
            .Where(a => a.Question == question)
            .OrderByDescending(a => a.Id)
            .Select(a => a.Answer)
            .FirstOrDefaultAsync(cancellation);

    private static T? Read<T>(string? kept)
        where T : class => kept is null ? null : JsonSerializer.Deserialize<T>(kept, Json);

    /// <summary>The newest counts; those before it go with the night.</summary>
    public static Task StoreAsync<T>(ClinicDb db, PersonActor reader, string question, T answer, CancellationToken cancellation)
    {
        db.StoredPageResults.Add(
            new StoredPageResult(Guid.CreateVersion7(), SalonsOf(reader), question, JsonSerializer.Serialize(answer, Json))
        );
        return db.SaveChangesAsync(cancellation);
    }

    /// <summary>Whoever sees the same salons sees the same; an owner sees what is nobody's too.</summary>
    private static Guid[] SalonsOf(PersonActor reader) => reader.StaffRole == StaffRole.Owner ? [] : [.. reader.Salons.Order()];
}

/// <summary>A page whose answers are worked out at night.</summary>
public interface INightlyPage
{
    /// <summary>Works out and keeps all that whoever acts may ask of it.</summary>
    Task PrecomputeAsync(CancellationToken cancellation);
}
