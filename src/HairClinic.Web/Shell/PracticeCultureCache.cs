using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using HairClinic.Web.Language;
using Microsoft.Extensions.Caching.Memory;

namespace HairClinic.Web.Shell;

/// <summary>The language a practice's staff screens speak, kept for a minute.</summary>
public sealed class PracticeCultureCache(ClinicDbFactory databases, IMemoryCache cache)
{
    public Task<CultureInfo?> FindAsync(PersonActor person, CancellationToken cancellation) =>
        cache.GetOrCreateAsync(
            (nameof(PracticeCultureCache), person.PracticeId),
            async entry =>
            {
                entry.AbsoluteExpirationRelativeToNow = TimeSpan.FromMinutes(1);
                await using var db = databases.Open();
                var practice = await db.PracticeSettings.Select(s => new { s.Culture, s.Region }).FirstOrDefaultAsync(cancellation);
                return practice is null ? null : Languages.CultureForStaff(CultureInfo.GetCultureInfo(practice.Culture), practice.Region);
            }
        );

    /// <summary>After it was changed.</summary>
    public void Forget(Guid practiceId) => cache.Remove((nameof(PracticeCultureCache), practiceId));
}
