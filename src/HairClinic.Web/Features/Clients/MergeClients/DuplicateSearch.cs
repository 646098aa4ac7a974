using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Clients;

/// <summary>
/// Records that may be the same person: the same phone or e-mail, or the same words of a name with the same birth
/// date. It looks among those whom the asker may open and says nothing of any other, not even how many.
/// </summary>
public sealed class DuplicateSearch(ClinicDbFactory databases)
{
    public async Task<IReadOnlyList<Duplicate>> FindAsync(Guid clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var client = await db.Clients.AsNoTracking().SingleOrDefaultAsync(c => c.Id == clientId, cancellation);
        if (client is null or { Phone: null, Email: null, BirthDate: null })
            return [];
        var email = client.Email?.ToLowerInvariant();
        var alike = await db
            .Clients.AsNoTracking()
            .Where(c => c.Id != clientId && c.MergedIntoId == null)
            .Where(c =>
                client.Phone != null && c.Phone == client.Phone
#pragma warning disable CA1304, CA1311, CA1862 // Lower case is the database's here.
                || email != null && c.Email!.ToLower() == email
#pragma warning restore CA1304, CA1311, CA1862
                || client.BirthDate != null && c.BirthDate == client.BirthDate
            )
            .OrderBy(c => c.Code)
            .ToListAsync(cancellation);
        return [.. alike.Select(other => Compare(client, other)).Where(d => d.SamePhone || d.SameEmail || d.SameNameAndBirth)];
    }

    private static Duplicate Compare(Client one, Client other) =>
        new(
            other.Id,
            one.Phone is not null && one.Phone == other.Phone,
            one.Email is not null && string.Equals(one.Email, other.Email, StringComparison.OrdinalIgnoreCase),
            one.BirthDate is not null
                && one.BirthDate == other.BirthDate
                && FindWordIndexer.Words(one.Name).ToHashSet().SetEquals(FindWordIndexer.Words(other.Name))
        );

    /// <summary>Another record, and what it has in common.</summary>
    public sealed record Duplicate(Guid ClientId, bool SamePhone, bool SameEmail, bool SameNameAndBirth);
}
