using HairClinic.Web.Data;
using Microsoft.Extensions.Caching.Memory;

namespace HairClinic.Web.Features.Settings;

/// <summary>Whether anyone practises here yet. Yes is remembered for a minute, no never.</summary>
public sealed class AnyPractice(PracticeJobs jobs, IMemoryCache cache)
{
    public async Task<bool> SomeonePractisesAsync(CancellationToken cancellation)
    {
        if (cache.TryGetValue(nameof(AnyPractice), out _))
            return true;
        if ((await jobs.PracticeIdsAsync(cancellation)).Count == 0)
            return false;
        cache.Set(nameof(AnyPractice), true, TimeSpan.FromMinutes(1));
        return true;
    }

    public void Forget() => cache.Remove(nameof(AnyPractice));
}
