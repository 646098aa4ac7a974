using System.Globalization;
using HairClinic.Web.Practices;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Caching.Memory;

namespace HairClinic.Web.Data.Books;

/// <summary>The language a practice's staff screens speak, kept for a minute.</summary>
public sealed class CultureBook(ClinicDbFactory databases, IMemoryCache cache)
{
    public Task<CultureInfo?> OfAsync(PersonActor person, CancellationToken cancellation) =>
        cache.GetOrCreateAsync(
            (nameof(CultureBook), person.PracticeId),
            async entry =>
            {
                entry.AbsoluteExpirationRelativeToNow = TimeSpan.FromMinutes(1);
                await using var db = databases.Open();
                var name = await db.PracticeSettings.Select(s => s.Culture).FirstOrDefaultAsync(cancellation);
                return name is null ? null : CultureInfo.GetCultureInfo(name);
            }
        );

    /// <summary>After it was changed.</summary>
    public void Forget(Guid practiceId) => cache.Remove((nameof(CultureBook), practiceId));
}
