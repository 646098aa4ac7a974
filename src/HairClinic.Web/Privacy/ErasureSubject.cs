using HairClinic.Web.Data;

namespace HairClinic.Web.Privacy;

/// <summary>Who is erased: a record and those folded into it, which were the same person.</summary>
/// <param name="Needles">What in a stored text would still tell of them, as PostgreSQL writes it within JSON.</param>
public sealed record ErasureSubject(Client Kept, Guid[] Ids, string[] Needles)
{
    /// <returns>Null: not there, or not the caller's. A folded record leads to the one it was folded into.</returns>
    public static async Task<ErasureSubject?> FindAsync(ClinicDb db, Guid clientId, CancellationToken cancellation)
    {
        var head = await db.Clients.AsNoTracking().SingleOrDefaultAsync(c => c.Id == clientId, cancellation);
        while (head?.MergedIntoId is { } into)
            head = await db.Clients.AsNoTracking().SingleOrDefaultAsync(c => c.Id == into, cancellation);
        if (head is null)
            return null;
        var all = new List<Client> { head };
        for (var from = 0; from < all.Count; )
        {
            var heads = all.Skip(from).Select(c => (Guid?)c.Id).ToList();
            from = all.Count;
            all.AddRange(await db.Clients.AsNoTracking().Where(c => heads.Contains(c.MergedIntoId)).ToListAsync(cancellation));
        }
        Guid[] ids = [.. all.Select(c => c.Id).Order()];
        // Earlier addresses appear in letters about the change.
        var addresses = await db
            .OpeningAddresses.Where(a => ids.Contains(a.ClientId) && a.GuardianId == null)
            .Select(a => a.Email)
            .ToListAsync(cancellation);
        return new(head, ids, [.. all.SelectMany(IdentifyingTexts).Concat(addresses.Select(Written)).Distinct()]);
    }

    // A short word inside a longer one tells of somebody else: codes and short names count only as whole values.
    private static IEnumerable<string> IdentifyingTexts(Client client)
    {
        yield return client.Id.ToString();
        yield return Whole(client.Code);
        yield return client.Name.Length < 5 ? Whole(client.Name) : Written(client.Name);
        if (client.CalledAs is { } called)
            yield return Whole(called);
        if (client.Phone is { } phone)
            yield return Written(phone);
        if (client.Email is { } email)
            yield return Written(email);
    }

    private static string Whole(string text) => $"\"{Written(text)}\"";

    private static string Written(string text) =>
        text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal);
}
