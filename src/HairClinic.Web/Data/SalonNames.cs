using HairClinic.Web.Fence;
using Microsoft.Extensions.Caching.Memory;

namespace HairClinic.Web.Data;

/// <summary>The names of the salons a person may look into, kept for a minute: every page's frame shows them.</summary>
public sealed class SalonNames(ClinicDbFactory databases, IMemoryCache cache)
{
    public async Task<IReadOnlyList<(Guid Id, string Name)>> LoadAsync(PersonActor person, CancellationToken cancellation)
    {
        var all = await cache.GetOrCreateAsync(
            (nameof(SalonNames), person.PracticeId),
            async entry =>
            {
                entry.AbsoluteExpirationRelativeToNow = TimeSpan.FromMinutes(1);
                await using var db = databases.Open();
                return await db
                    .Salons.Where(s => !s.Retired)
                    .OrderBy(s => s.Name)
                    .Select(s => new ValueTuple<Guid, string>(s.Id, s.Name))
                    .ToListAsync(cancellation);
            }
        );
        return [.. all!.Where(s => person.Salons.Contains(s.Item1))];
    }

    /// <summary>After a salon was added, renamed or retired.</summary>
    public void Invalidate(Guid practiceId) => cache.Remove((nameof(SalonNames), practiceId));
}
