using HairClinic.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Features.Binder.Names;

/// <summary>Clients by code, merged records led to the one that was kept.</summary>
public sealed class ClientCodes
{
    private readonly Dictionary<string, Guid> ids = new(StringComparer.Ordinal);
    private readonly Dictionary<Guid, string> codes = [];
    private readonly Dictionary<Guid, Guid> mergedInto = [];

    public static async Task<ClientCodes> LoadAsync(ClinicDb db, CancellationToken cancellation)
    {
        var book = new ClientCodes();
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
            book.ids[client.Code] = client.Id;
            book.codes[client.Id] = client.Code;
            if (client.MergedIntoId is { } kept)
                book.mergedInto[client.Id] = kept;
        }
        return book;
    }

    public Guid? Find(string code) => ids.TryGetValue(code, out var id) ? Kept(id) : null;

    public string? CodeOf(Guid? id) => id is { } some ? codes[Kept(some)] : null;

    public Guid Kept(Guid id)
    {
        while (mergedInto.TryGetValue(id, out var kept))
            id = kept;
        return id;
    }
}
