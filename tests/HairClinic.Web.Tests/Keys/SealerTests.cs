using System.Security.Cryptography;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Sealing;
using HairClinic.Web.Keys;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Web.Tests.Keys;

public sealed class SealerTests(PgServer server)
{
    private static readonly byte[] Plain = "What was confided"u8.ToArray();
    private readonly Guid _row = Guid.CreateVersion7();
    private Guid _ada;
    private Guid _bea;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_was_sealed_opens_for_the_same_client_purpose_and_row_and_nowhere_else()
    {
        await using var clinic = await OpenAsync();
        var closed = await SealAsync(clinic, _ada, "notes", _row);
        await SealAsync(clinic, _bea, "notes", _row);

        Assert.Equal(Plain, (await OpenSealedAsync(clinic, _ada, "notes", _row, closed)).Bytes);
        await Assert.ThrowsAnyAsync<CryptographicException>(() => OpenSealedAsync(clinic, _bea, "notes", _row, closed));
        await Assert.ThrowsAnyAsync<CryptographicException>(() => OpenSealedAsync(clinic, _ada, "photo", _row, closed));
        await Assert.ThrowsAnyAsync<CryptographicException>(() => OpenSealedAsync(clinic, _ada, "notes", Guid.CreateVersion7(), closed));
        Assert.DoesNotContain("confided", System.Text.Encoding.UTF8.GetString(closed), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrapped_key_moved_to_another_client_does_not_open()
    {
        await using var clinic = await OpenAsync();
        var closed = await SealAsync(clinic, _ada, "notes", _row);
        await SealAsync(clinic, _bea, "notes", _row);
        await clinic.ReadAsync(async db =>
        {
            var stolen = await db.ClientKeys.Where(k => k.ClientId == _ada).Select(k => k.Wrapped).SingleAsync(Cancel);
            return await db
                .ClientKeys.Where(k => k.ClientId == _bea)
                .ExecuteUpdateAsync(k => k.SetProperty(x => x.Wrapped, stolen), Cancel);
        });

        await Assert.ThrowsAnyAsync<CryptographicException>(() => OpenSealedAsync(clinic, _bea, "notes", _row, closed));
    }

    [Fact]
    public async Task Two_first_saves_at_once_make_one_key()
    {
        await using var clinic = await OpenAsync();

        var closed = await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => SealAsync(clinic, _ada, "notes", _row)));

        Assert.Equal(1, await clinic.ReadAsync(db => db.ClientKeys.CountAsync(Cancel)));
        foreach (var one in closed)
            Assert.Equal(Plain, (await OpenSealedAsync(clinic, _ada, "notes", _row, one)).Bytes);
    }

    [Fact]
    public async Task A_destroyed_key_opens_nothing_and_is_never_replaced()
    {
        await using var clinic = await OpenAsync();
        var closed = await SealAsync(clinic, _ada, "notes", _row);

        Assert.True(await WithAsync(clinic, (sealer, db) => sealer.DestroyKeyAsync(db, _ada, Cancel)));

        Assert.True((await OpenSealedAsync(clinic, _ada, "notes", _row, closed)).Destroyed);
        await Refused.SayingAsync(
            "What this client confided was erased. Nothing can be added to it.",
            () => SealAsync(clinic, _ada, "notes", _row)
        );
        Assert.Empty(await clinic.ReadAsync(db => db.ClientKeys.Select(k => k.Wrapped).SingleAsync(Cancel)));
        Assert.False(await WithAsync(clinic, (sealer, db) => sealer.DestroyKeyAsync(db, _ada, Cancel)));
    }

    private async Task<TestClinic> OpenAsync() =>
        await TestClinic.OpenAsync(
            server,
            scene =>
            {
                var salon = scene.AddPractice("Practice under test").OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
                _ada = scene.AddClient("C-1", "Ada Fenwick", salon).Id;
                _bea = scene.AddClient("C-2", "Bea Quill", salon).Id;
            }
        );

    private static Task<byte[]> SealAsync(TestClinic clinic, Guid client, string purpose, Guid row) =>
        WithAsync(clinic, (sealer, db) => sealer.SealAsync(db, client, purpose, row, Plain, Cancel));

    private static Task<UnsealResult> OpenSealedAsync(TestClinic clinic, Guid client, string purpose, Guid row, byte[] closed) =>
        WithAsync(clinic, (sealer, db) => sealer.OpenAsync(db, client, purpose, row, closed, Cancel));

    private static Task<T> WithAsync<T>(TestClinic clinic, Func<Sealer, ClinicDb, Task<T>> work) =>
        clinic.AsAsync(
            clinic.Job,
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                return await work(services.GetRequiredService<Sealer>(), db);
            }
        );
}
