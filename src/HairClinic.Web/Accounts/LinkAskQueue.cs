using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Accounts;

/// <summary>
/// Queues the request for a sign-in link. Whether the address is known is looked up later by a worker,
/// so that neither the answer nor its time reveals it.
/// </summary>
public sealed class LinkAskQueue(IClock clock)
{
    /// <summary>Links asked for one address within an hour; what is beyond is forgotten.</summary>
    public const int PerHour = 5;

    private const int Batch = 50;
    private static readonly Duration Hour = Duration.FromHours(1);

    public async Task AskAsync(ClinicDb unfenced, string email, CancellationToken cancellation)
    {
        var now = clock.GetCurrentInstant();
        var address = email.Trim().ToLowerInvariant();
        var hash = Hash(address);
        var since = now - Hour;
        await using var transaction = await unfenced.Database.BeginTransactionAsync(cancellation);
        // One at a time for an address, or a burst would be counted before any of it is written.
        await unfenced.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock({BitConverter.ToInt64(hash)})", cancellation);
        if (await unfenced.LinkAsks.CountAsync(a => a.AddressHash == hash && a.At > since, cancellation) < PerHour)
        {
            unfenced.LinkAsks.Add(new LinkAsk(Guid.CreateVersion7(), hash, address, now));
            await unfenced.SaveChangesAsync(cancellation);
        }
        await transaction.CommitAsync(cancellation);
    }

    /// <summary>The addresses asked for and not looked up yet, each given out once; asks older than an hour go.</summary>
    /// <param name="only">One address; null for all.</param>
    public async Task<IReadOnlyList<string>> DequeueBatchAsync(ClinicDb unfenced, string? only, CancellationToken cancellation)
    {
        var hash = only is null ? null : Hash(only.Trim().ToLowerInvariant());
        var asks = await unfenced
            .LinkAsks.AsNoTracking()
            .Where(a => a.Address != null && (hash == null || a.AddressHash == hash))
            .OrderBy(a => a.At)
            .Take(Batch)
            .ToListAsync(cancellation);
        var taken = new List<string>(asks.Count);
        foreach (var ask in asks)
        {
            // Two programs on one database: one of them gets it.
            if (
                await unfenced
                    .LinkAsks.Where(a => a.Id == ask.Id && a.Address != null)
                    .ExecuteUpdateAsync(set => set.SetProperty(a => a.Address, (string?)null), cancellation) == 1
            )
                taken.Add(ask.Address!);
        }
        if (only is null)
        {
            var since = clock.GetCurrentInstant() - Hour;
            await unfenced.LinkAsks.Where(a => a.At <= since && a.Address == null).ExecuteDeleteAsync(cancellation);
        }
        return taken;
    }

    private static byte[] Hash(string address) => SHA256.HashData(Encoding.UTF8.GetBytes(address));
}
