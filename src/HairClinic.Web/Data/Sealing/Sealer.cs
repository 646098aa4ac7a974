using HairClinic.Web.Keys;

namespace HairClinic.Web.Data.Sealing;

/// <summary>
/// Seals what may be read only with a client's own key, and opens it again. Keys are unwrapped for one operation and wiped:
/// none is kept in memory. What is returned open is the caller's to wipe.
/// </summary>
public sealed class Sealer(MasterKeys masters, IClock clock)
{
    /// <param name="purpose">What the bytes are, such as "health answers"; they open only for the same.</param>
    /// <param name="rowId">The row or file that carries them.</param>
    /// <exception cref="Refusal">The client's key was destroyed: what was erased is not begun again.</exception>
    public async Task<byte[]> SealAsync(
        ClinicDb db,
        Guid clientId,
        string purpose,
        Guid rowId,
        ReadOnlyMemory<byte> plain,
        CancellationToken cancellation
    )
    {
        var row = await FindAsync(db, clientId, cancellation) ?? await MakeAsync(db, clientId, cancellation);
        if (row.DestroyedAt is not null)
            throw new Refusal("What this client confided was erased. Nothing can be added to it.");
        var key = Unwrap(row);
        try
        {
            return AesGcmCipher.Seal(key, AssociatedData.ForContent(row.PracticeId, clientId, purpose, rowId), plain.Span);
        }
        finally
        {
            CryptographicOperations.ZeroMemory(key);
        }
    }

    /// <exception cref="CryptographicException">The bytes were changed or belong elsewhere.</exception>
    public async Task<UnsealResult> OpenAsync(
        ClinicDb db,
        Guid clientId,
        string purpose,
        Guid rowId,
        ReadOnlyMemory<byte> closed,
        CancellationToken cancellation
    )
    {
        if (await FindAsync(db, clientId, cancellation) is not { DestroyedAt: null } row)
            return UnsealResult.KeyDestroyed;
        var key = Unwrap(row);
        try
        {
            return new(AesGcmCipher.Unseal(key, AssociatedData.ForContent(row.PracticeId, clientId, purpose, rowId), closed.Span));
        }
        finally
        {
            CryptographicOperations.ZeroMemory(key);
        }
    }

    /// <summary>
    /// Makes everything sealed for the client unreadable, at once and for good. Backups and the database's own log still hold
    /// the wrapped key until they are gone: an erasure is complete when the oldest backup is.
    /// </summary>
    /// <returns>Whether there was a key.</returns>
    public async Task<bool> DestroyKeyAsync(ClinicDb db, Guid clientId, CancellationToken cancellation)
    {
        Instant? now = clock.GetCurrentInstant();
        return await db
                .ClientKeys.Where(k => k.ClientId == clientId && k.DestroyedAt == null)
                .ExecuteUpdateAsync(
                    k => k.SetProperty(x => x.Wrapped, Array.Empty<byte>()).SetProperty(x => x.DestroyedAt, now),
                    cancellation
                ) > 0;
    }

    internal byte[] Wrap(Guid practiceId, Guid clientId, ReadOnlySpan<byte> key, MasterKey master)
    {
        var wrapping = master.DeriveKey("client keys");
        try
        {
            return AesGcmCipher.Seal(wrapping, AssociatedData.ForClientKey(practiceId, clientId, master.Id), key);
        }
        finally
        {
            CryptographicOperations.ZeroMemory(wrapping);
        }
    }

    internal byte[] Unwrap(ClientKey row)
    {
        var master =
            masters.Find(row.MasterKeyId)
            ?? throw new InvalidOperationException($"Key {row.MasterKeyId} is not in the key file, so this client's key cannot be opened.");
        var wrapping = master.DeriveKey("client keys");
        try
        {
            return AesGcmCipher.Unseal(wrapping, AssociatedData.ForClientKey(row.PracticeId, row.ClientId, master.Id), row.Wrapped);
        }
        finally
        {
            CryptographicOperations.ZeroMemory(wrapping);
        }
    }

    private static Task<ClientKey?> FindAsync(ClinicDb db, Guid clientId, CancellationToken cancellation) =>
        db.ClientKeys.AsNoTracking().SingleOrDefaultAsync(k => k.ClientId == clientId, cancellation);

    // Not through the change tracker: two first saves at once must end with one key and no failed save.
    private async Task<ClientKey> MakeAsync(ClinicDb db, Guid clientId, CancellationToken cancellation)
    {
        var key = RandomNumberGenerator.GetBytes(MasterKey.Size);
        var master = masters.Current;
        var wrapped = Wrap(db.PracticeId, clientId, key, master);
        CryptographicOperations.ZeroMemory(key);
        await db.Database.ExecuteSqlAsync(
            $"""
            insert into client_keys (practice_id, id, client_id, wrapped, master_key_id, created_at)
            values ({db.PracticeId}, {Guid.CreateVersion7()}, {clientId}, {wrapped}, {master.Id}, {clock.GetCurrentInstant()})
            on conflict (practice_id, client_id) do nothing
            """,
            cancellation
        );
        return await FindAsync(db, clientId, cancellation)
            ?? throw new InvalidOperationException("A client's key was made and is not there.");
    }
}
