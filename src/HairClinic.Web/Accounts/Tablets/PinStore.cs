using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Sealing;
using HairClinic.Web.Keys;

namespace HairClinic.Web.Accounts.Tablets;

/// <summary>Keeps and checks PINs. What is kept opens nothing without the master key file, so a copied database cannot be guessed from.</summary>
public sealed class PinStore(
    TabletStore tablets,
    ClinicDbFactory databases,
    AccountPasswordHasher hasher,
    HashingQueue hashing,
    MasterKeys masters,
    IClock clock
)
{
    /// <summary>Whether they have one at this tablet that a later change of their sign-in has not undone.</summary>
    public Task<bool> HasAsync(AppUser user, Tablet tablet, CancellationToken cancellation)
    {
        var stamp = StampOf(user);
        return tablets.RunInPracticeAsync(
            tablet.PracticeId,
            db => db.TabletPins.AnyAsync(p => p.TabletId == tablet.Id && p.PersonId == user.PersonId && p.Stamp == stamp, cancellation)
        );
    }

    public async Task SetAsync(AppUser user, Tablet tablet, string pin, CancellationToken cancellation)
    {
        var key = masters.Current;
        var hash = await hashing.RunAsync(() => hasher.HashPassword(user, Peppered(key, tablet.Id, user.PersonId, pin)), cancellation);
        await tablets.RunInPracticeAsync(
            tablet.PracticeId,
            async db =>
            {
                var row = await PinsFor(db, tablet.Id, user.PersonId).SingleOrDefaultAsync(cancellation);
                if (row is null)
                    db.TabletPins.Add(row = new TabletPin(Guid.CreateVersion7(), tablet.Id, user.PersonId));
                row.SetPin(hash, key.Id, StampOf(user), clock.GetCurrentInstant());
                return await db.SaveChangesAsync(cancellation);
            }
        );
    }

    public Task RemoveAsync(AppUser user, Tablet tablet, CancellationToken cancellation) =>
        tablets.RunInPracticeAsync(tablet.PracticeId, db => PinsFor(db, tablet.Id, user.PersonId).ExecuteDeleteAsync(cancellation));

    /// <summary>
    /// Takes one of the tries before it looks, so that tries at the same moment cannot all be the fifth. Whatever is wrong (the PIN, its
    /// tries, the full sign-in, the person) takes as long and answers alike.
    /// </summary>
    /// <returns>Whose it is; null when it opens nothing.</returns>
    /// <exception cref="TooBusyException">It was not looked at, and no try was taken.</exception>
    public Task<AppUser?> CountAndCheckAsync(Tablet tablet, Guid personId, string pin, CancellationToken cancellation) =>
        hashing.RunAsync(() => TakeAndLookAsync(tablet, personId, pin, cancellation), cancellation);

    private async Task<AppUser?> TakeAndLookAsync(Tablet tablet, Guid personId, string pin, CancellationToken cancellation)
    {
        var (row, taken) = await tablets.RunInPracticeAsync(
            tablet.PracticeId,
            async db =>
            {
                var left = await PinsFor(db, tablet.Id, personId)
                    .Where(p => p.WrongTries < TabletPin.Tries)
                    .ExecuteUpdateAsync(set => set.SetProperty(p => p.WrongTries, p => p.WrongTries + 1), cancellation);
                return (await PinsFor(db, tablet.Id, personId).AsNoTracking().SingleOrDefaultAsync(cancellation), left == 1);
            }
        );
        await using var accounts = databases.OpenWithoutActor();
        var user = await accounts
            .Users.AsNoTracking()
            .SingleOrDefaultAsync(u => u.PracticeId == tablet.PracticeId && u.PersonId == personId, cancellation);
        var stands = await SessionStore
            .FullSessionsAt(accounts, tablet.Id, clock.GetCurrentInstant())
            .AnyAsync(s => s.PersonId == personId, cancellation);
        var key = row is null ? masters.Current : masters.Find(row.MasterKeyId) ?? masters.Current;
        var typed = Peppered(key, tablet.Id, personId, pin);
        if (!taken || !stands || row is null || user is null || row.Stamp != StampOf(user))
        {
            hasher.SimulateVerification(typed);
            return null;
        }
        if (hasher.VerifyHashedPassword(user, row.Hash, typed) == PasswordVerificationResult.Failed)
            return null;
        await tablets.RunInPracticeAsync(
            tablet.PracticeId,
            db => PinsFor(db, tablet.Id, personId).ExecuteUpdateAsync(set => set.SetProperty(p => p.WrongTries, 0), cancellation)
        );
        return user;
    }

    private static IQueryable<TabletPin> PinsFor(ClinicDb db, Guid tabletId, Guid personId) =>
        db.TabletPins.Where(p => p.TabletId == tabletId && p.PersonId == personId);

    private static string StampOf(AppUser user) => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(user.SecurityStamp ?? "")));

    // Bound to tablet and person, so that a row moved to another person matches no PIN.
    private static string Peppered(MasterKey master, Guid tabletId, Guid personId, string pin)
    {
        var key = master.DeriveKey("tablet PIN");
        var mixed = HMACSHA256.HashData(
            key,
            AssociatedData.EncodeParts(AssociatedData.GuidBytes(tabletId), AssociatedData.GuidBytes(personId), Encoding.UTF8.GetBytes(pin))
        );
        CryptographicOperations.ZeroMemory(key);
        return Convert.ToBase64String(mixed);
    }
}
