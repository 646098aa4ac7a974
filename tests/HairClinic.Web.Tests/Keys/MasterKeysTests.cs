using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.CommandLine;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Sealing;
using HairClinic.Web.Keys;
using HairClinic.Web.Tests.EmbeddedPostgres;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Web.Tests.Keys;

public sealed class MasterKeysTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_first_start_makes_a_file_that_only_its_owner_can_read_and_the_next_reads_it()
    {
        using var site = new KeySite(server);
        await using (var first = await site.StartAsync())
            first.GetRequiredService<MasterKeys>().LoadAndCheck();

        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(site.File));
        Assert.Equal(
            UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute,
            File.GetUnixFileMode(Path.GetDirectoryName(site.File)!)
        );
        var body = await File.ReadAllTextAsync(site.File, Cancel);
        await using var again = await site.StartAsync();
        Assert.Contains(again.GetRequiredService<MasterKeys>().Current.Id, body, StringComparison.Ordinal);
        Assert.Equal(body, await File.ReadAllTextAsync(site.File, Cancel));
    }

    [Fact]
    public async Task Without_the_file_its_data_need_the_program_refuses_and_makes_no_new_one()
    {
        using var site = new KeySite(server);
        await using (var first = await site.StartAsync())
            first.GetRequiredService<MasterKeys>().LoadAndCheck();
        File.Delete(site.File);

        await using var again = await site.StartAsync();
        var refused = Assert.Throws<InvalidOperationException>(again.GetRequiredService<MasterKeys>().LoadAndCheck);

        Assert.Contains(site.File, refused.Message, StringComparison.Ordinal);
        Assert.Contains("missing", refused.Message, StringComparison.Ordinal);
        Assert.False(File.Exists(site.File));
    }

    [Fact]
    public async Task The_file_of_another_database_or_a_damaged_one_is_refused()
    {
        using var site = new KeySite(server);
        await using (var first = await site.StartAsync())
            first.GetRequiredService<MasterKeys>().LoadAndCheck();
        MasterKeyFile.Write(site.File, [MasterKey.Make(TestClinic.UsualNow)]);
        await using (var again = await site.StartAsync())
            Assert.Throws<InvalidOperationException>(again.GetRequiredService<MasterKeys>().LoadAndCheck);

        await File.WriteAllTextAsync(site.File, "{\"keys\": [", Cancel);
        await using var damaged = await site.StartAsync();
        Assert.Throws<InvalidOperationException>(damaged.GetRequiredService<MasterKeys>().LoadAndCheck);
    }

    [Fact]
    public async Task Rotating_wraps_every_clients_key_anew_and_what_was_sealed_before_still_opens()
    {
        using var site = new KeySite(server);
        var practice = Guid.CreateVersion7();
        var (clients, row) = (
            Enumerable.Range(0, KeyRotation.Batch + 5).Select(_ => Guid.CreateVersion7()).ToList(),
            Guid.CreateVersion7()
        );
        var closed = new Dictionary<Guid, byte[]>();
        await using (var first = await site.StartAsync())
        {
            await LayAsync(first, practice, clients);
            foreach (var client in clients)
                closed[client] = await InAsync(first, practice, (s, db) => s.SealAsync(db, client, "notes", row, new byte[] { 7 }, Cancel));
            await InAsync(first, practice, (s, db) => s.DestroyKeyAsync(db, clients[0], Cancel));

            var done = await first.GetRequiredService<KeyRotation>().RotateMasterKeyAsync(Cancel);

            Assert.True(done.Added);
            Assert.Equal(clients.Count - 1, done.Rewrapped);
            var noted = await Sql.AskAsync(
                site.Administrator,
                $"select string_agg(deed || ' ' || role || ' ' || (key_id = '{done.CurrentId}'), ',') from access_notes where practice_id = '{practice}'"
            );
            Assert.Equal("RotatedKeys keys true", noted);
        }
        // A rotation that was cut short: a new key is in the file, and some client keys lie under it.
        await using (var cut = await site.StartAsync())
        {
            cut.GetRequiredService<MasterKeys>().GenerateNew();
            await InAsync(cut, practice, (s, db) => s.DestroyKeyAsync(db, clients[1], Cancel));
        }
        await using var again = await site.StartAsync();
        var went = await again.GetRequiredService<KeyRotation>().RotateMasterKeyAsync(Cancel);

        Assert.False(went.Added);
        Assert.Equal(clients.Count - 2, went.Rewrapped);
        var status = await again.GetRequiredService<KeyRotation>().ReadStatusAsync(Cancel);
        Assert.Equal((3, clients.Count, 2, 0), (status.Keys.Count, status.ClientKeys, status.Destroyed, status.Behind));
        foreach (var client in clients.Skip(2))
            Assert.Equal(
                [7],
                (await InAsync(again, practice, (s, db) => s.OpenAsync(db, client, "notes", row, closed[client], Cancel))).Bytes!
            );
    }

    [Fact]
    public async Task The_keys_of_cookies_lie_sealed_and_still_open_after_a_restart_and_a_rotation()
    {
        using var site = new KeySite(server);
        string ticket;
        await using (var first = await site.StartAsync())
            ticket = first.GetRequiredService<IDataProtectionProvider>().CreateProtector("test").Protect("a ticket");

        var xml = (string)(await Sql.AskAsync(site.Program, "select string_agg(xml, '') from data_protection_keys"))!;
        Assert.Contains(nameof(OpenedXml), xml, StringComparison.Ordinal);
        Assert.DoesNotContain("masterKey xmlns", xml, StringComparison.Ordinal);
        Assert.DoesNotContain("<value>", xml, StringComparison.Ordinal);
        await using (var rotating = await site.StartAsync())
            await rotating.GetRequiredService<KeyRotation>().RotateMasterKeyAsync(Cancel);
        await using var again = await site.StartAsync();
        Assert.Equal("a ticket", again.GetRequiredService<IDataProtectionProvider>().CreateProtector("test").Unprotect(ticket));
    }

    [Fact]
    public async Task Keys_of_cookies_from_before_lie_open_and_are_still_read()
    {
        using var site = new KeySite(server);
        await using (var first = await site.StartAsync())
        {
            await using var db = first.CreateAsyncScope().ServiceProvider.GetRequiredService<ClinicDbFactory>().OpenWithoutActor();
            db.DataProtectionKeys.Add(new() { FriendlyName = "old", Xml = UnsealedKey });
            await db.SaveChangesAsync(Cancel);
        }
        await using var now = await site.StartAsync();
        var keys = now.GetRequiredService<Microsoft.AspNetCore.DataProtection.KeyManagement.IKeyManager>().GetAllKeys();

        Assert.NotNull(Assert.Single(keys).CreateEncryptor());
    }

    // Made by this library without an encryptor.
    private const string UnsealedKey = """
        <key id="2b0c9c7e-4f36-4d0c-8a39-90f1a8a1d3d1" version="1"><creationDate>2026-01-01T00:00:00Z</creationDate><activationDate>2026-01-01T00:00:00Z</activationDate><expirationDate>2046-01-01T00:00:00Z</expirationDate><descriptor deserializerType="Microsoft.AspNetCore.DataProtection.AuthenticatedEncryption.ConfigurationModel.AuthenticatedEncryptorDescriptorDeserializer, Microsoft.AspNetCore.DataProtection, Version=10.0.0.0, Culture=neutral, PublicKeyToken=adb9793829ddae60"><descriptor><encryption algorithm="AES_256_CBC" /><validation algorithm="HMACSHA256" /><masterKey p4:requiresEncryption="true" xmlns:p4="http://schemas.asp.net/2015/03/dataProtection"><value>AAECAwQFBgcICQoLDA0ODxAREhMUFRYXGBkaGxwdHh8gISIjJCUmJygpKissLS4vMDEyMzQ1Njc4OTo7PD0+Pw==</value></masterKey></descriptor></descriptor></key>
        """;

    private static Task<bool> LayAsync(IServiceProvider services, Guid practice, IEnumerable<Guid> clients) =>
        services
            .GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(
                practice,
                "test",
                async scope =>
                {
                    var databases = scope.GetRequiredService<ClinicDbFactory>();
                    await using (var unfenced = databases.OpenWithoutActor())
                    {
                        unfenced.Practices.Add(new PracticeRow(practice));
                        await unfenced.SaveChangesAsync(Cancel);
                    }
                    await using var db = databases.Open();
                    var salon = new Salon(Guid.CreateVersion7(), "Elm Row", "Europe/London", "GBP");
                    db.Add(salon);
                    db.AddRange(clients.Select((id, i) => new Client(id, $"C-{i}", "Ada Fenwick", salon.Id)));
                    await db.SaveChangesAsync(Cancel);
                    return true;
                }
            );

    private static Task<T> InAsync<T>(IServiceProvider services, Guid practice, Func<Sealer, HairClinic.Web.Data.ClinicDb, Task<T>> work) =>
        services
            .GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(
                practice,
                "test",
                async scope =>
                {
                    await using var db = scope.GetRequiredService<ClinicDbFactory>().Open();
                    return await work(scope.GetRequiredService<Sealer>(), db);
                }
            );
}
