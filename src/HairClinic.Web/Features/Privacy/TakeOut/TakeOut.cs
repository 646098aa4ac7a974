using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Privacy;

namespace HairClinic.Web.Features.Privacy;

/// <summary>Everything the book holds of one client, for the practice to hand over.</summary>
public sealed class TakeOut(ClinicDbFactory databases, ClientTakeOut archive)
{
    /// <returns>Null: not there, or not theirs.</returns>
    /// <exception cref="Domain.Practices.Refusal">More than fits into one archive.</exception>
    public async Task<Screen?> OpenAsync(Guid clientId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var client = await db.Clients.AsNoTracking().UnmergedById(clientId).SingleOrDefaultAsync(cancellation);
        if (client is null)
            return null;
        await using var wide = databases.OpenPracticeWide(nameof(TakeOut));
        if (await ClientTakeOut.PreviewAsync(wide, clientId, cancellation) is not { } contents)
            return null;
        var pictures = await wide.Photos.CountAsync(p => contents.Ids.Contains(p.ClientId) && p.RemovedAt == null, cancellation);
        return new Screen(client.Name, client.Code, contents.Rows.Values.Sum(), pictures);
    }

    /// <param name="begin">Given the file's name once it is sure that there is one; returns what to write to.</param>
    /// <returns>Whether there was such a client.</returns>
    public async Task<bool> WriteAsync(Guid clientId, Func<string, Stream> begin, CancellationToken cancellation)
    {
        await using (var db = databases.Open())
        {
            if (!await db.Clients.UnmergedById(clientId).AnyAsync(cancellation))
                return false;
        }
        await using var wide = databases.OpenPracticeWide(nameof(TakeOut));
        if (await ClientTakeOut.PreviewAsync(wide, clientId, cancellation) is not { } contents)
            return false;
        await archive.WriteAsync(wide, contents, begin($"record-{contents.Code}.zip"), cancellation);
        return true;
    }

    /// <param name="Rows">In all tables together.</param>
    public sealed record Screen(string Name, string Code, int Rows, int Photos);
}
