using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Clients;

/// <summary>
/// Clients with a number that is about to be noted for another. Families share one, so it is a question and never a refusal; and it is
/// asked of those only whom the asker may see.
/// </summary>
public static class SharedPhoneCheck
{
    private const int Most = 3;

    /// <param name="phone">E.164; null asks nothing.</param>
    /// <param name="butNot">Whose number it is to be.</param>
    /// <param name="agreed">Somebody said already that it is another person.</param>
    /// <exception cref="SamePhoneNumberException">Somebody should look first.</exception>
    public static async Task ThrowIfSharedAsync(ClinicDb db, string? phone, Guid? butNot, bool agreed, CancellationToken cancellation)
    {
        if (phone is null || agreed)
            return;
        var others = await db
            .Clients.Where(c => c.Phone == phone && c.Id != butNot && c.MergedIntoId == null)
            .OrderBy(c => c.Name)
            .ThenBy(c => c.Id)
            .Select(c => new Other(c.Id, c.Name))
            .Take(Most)
            .ToListAsync(cancellation);
        if (others.Count > 0)
            throw new SamePhoneNumberException(others);
    }

    /// <summary>Somebody else of that number.</summary>
    public sealed record Other(Guid ClientId, string Name);
}

/// <summary>Nothing was saved: somebody should say first whether it is the same person. Known as invalid so that a repeated submission still gets its first answer.</summary>
internal sealed class SamePhoneNumberException(IReadOnlyList<SharedPhoneCheck.Other> others)
    : InvalidOperationException("Another client has the same number.")
{
    public IReadOnlyList<SharedPhoneCheck.Other> Others { get; } = others;
}
