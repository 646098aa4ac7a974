using HairClinic.Web.Data;
using Microsoft.Extensions.Caching.Memory;

namespace HairClinic.Web.Features.Settings;

/// <summary>Whether anyone practises here yet. Yes is remembered for a minute, no never.</summary>
public sealed class PracticePresence(PracticeJobRunner jobs, IMemoryCache cache)
{
    public async Task<bool> AnyAsync(CancellationToken cancellation)
    {
        if (cache.TryGetValue(nameof(PracticePresence), out _))
            return true;
        if ((await jobs.PracticeIdsAsync(cancellation)).Count == 0)
            return false;
        cache.Set(nameof(PracticePresence), true, TimeSpan.FromMinutes(1));
        return true;
    }

    public void Forget() => cache.Remove(nameof(PracticePresence));
}
