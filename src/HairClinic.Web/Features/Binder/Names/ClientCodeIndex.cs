using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Binder;

/// <summary>Clients by code, merged records led to the one that was kept.</summary>
public sealed class ClientCodeIndex
{
    private readonly Dictionary<string, Guid> _ids = new(StringComparer.Ordinal);
    private readonly Dictionary<Guid, string> _codes = [];
    private readonly Dictionary<Guid, Guid> _mergedInto = [];

    public static async Task<ClientCodeIndex> LoadAsync(ClinicDb db, CancellationToken cancellation)
    {
        var book = new ClientCodeIndex();
        foreach (
            var client in await db
                .Clients.AsNoTracking()
                .Select(c => new
                {
                    c.Id,
                    c.Code,
                    c.MergedIntoId,
                })
                .ToListAsync(cancellation)
        )
        {
            book._ids[client.Code] = client.Id;
            book._codes[client.Id] = client.Code;
            if (client.MergedIntoId is { } kept)
                book._mergedInto[client.Id] = kept;
        }
        return book;
    }

    public Guid? Find(string code) => _ids.TryGetValue(code, out var id) ? ResolveMerged(id) : null;

    public string? CodeOf(Guid? id) => id is { } some ? _codes[ResolveMerged(some)] : null;

    public Guid ResolveMerged(Guid id)
    {
        while (_mergedInto.TryGetValue(id, out var kept))
            id = kept;
        return id;
    }
}
