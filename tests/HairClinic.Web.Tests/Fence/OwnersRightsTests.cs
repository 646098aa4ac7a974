using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using NpgsqlTypes;

namespace HairClinic.Web.Tests.Fence;

/// <summary>What reads with its owner's rights, past the policies: a client's first page, and the grants that open.</summary>
public sealed class OwnersRightsTests(PgServer server)
{
    private Salon _salon = null!;
    private Person _desk = null!;
    private Client _ada = null!;
    private Client _ben = null!;

    [Fact]
    public async Task The_own_page_is_there_for_whom_it_is_asked_and_leaves_nobody_acting()
    {
        await using var clinic = await OpenAsync();

        var (hers, his) = (await clinic.SignInAsync(_ada.Id), await clinic.SignInAsync(_ben.Id));
        Assert.Equal(["Ada Fenwick"], await CalledAsync(hers));
        Assert.Equal(["Ben Arkwright"], await CalledAsync(his));
        await clinic.LayAsync(scene => scene.Db.Clients.Single(c => c.Id == _ben.Id).Leave(new(2027, 2, 1)));
        Assert.Empty(await CalledAsync(his));
    }

    [Fact]
    public async Task The_own_page_answers_nobody_without_a_sign_in_that_opens_it()
    {
        await using var clinic = await OpenAsync();
        var hers = await clinic.SignInAsync(_ada.Id);

        Assert.Empty(await CalledAsync(hers with { SignInId = null }));
        Assert.Empty(await CalledAsync(hers with { ClientId = _ben.Id }));
    }

    [Fact]
    public async Task The_grants_that_open_are_read_and_never_written_past_the_fence()
    {
        await using var clinic = await OpenAsync();

        Assert.Equal(2, await clinic.UseAsync<ClinicDbFactory, int>(clinic.Acting(_desk, _salon), CountAsync));
        Assert.Equal(0, await clinic.UseAsync<ClinicDbFactory, int>(new ClientActor(clinic.PracticeId, _ada.Id), CountAsync));
        foreach (var deed in new[] { "delete from opened_clients", "update opened_clients set client_id = client_id" })
        {
            var refused = await Assert.ThrowsAsync<PostgresException>(() =>
                clinic.UseAsync<ClinicDbFactory, int>(clinic.Acting(_desk, _salon), Do)
            );
            Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, refused.SqlState);

            async Task<int> Do(ClinicDbFactory databases)
            {
                await using var db = databases.Open();
                return await db.Database.ExecuteSqlRawAsync(deed, TestContext.Current.CancellationToken);
            }
        }

        static async Task<int> CountAsync(ClinicDbFactory databases)
        {
            await using var db = databases.Open();
            return await db
                .Database.SqlQuery<int>($"select count(*)::int as \"Value\" from opened_clients")
                .SingleAsync(TestContext.Current.CancellationToken);
        }
    }

    private Task<TestClinic> OpenAsync() =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("Practice under test");
                _salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
                _desk = scene.Hire("Desk", StaffRole.FrontDesk, _salon);
                _ada = scene.AddClient("C-1", "Ada Fenwick", _salon, email: "ada@example.test");
                _ben = scene.AddClient("C-2", "Ben Arkwright", _salon, email: "ben@example.test");
            }
        );

    // As the page itself asks, where nobody acts yet; what was acted is forgotten before the connection is asked again.
    private async Task<List<string>> CalledAsync(ClientActor actor)
    {
        var cancel = TestContext.Current.CancellationToken;
        await using var connection = new NpgsqlConnection(server.Connections.Program);
        await connection.OpenAsync(cancel);
        await using var page = new NpgsqlCommand("select name from own_page($1, $2, $3, now())", connection)
        {
            Parameters =
            {
                new() { Value = actor.PracticeId },
                new() { Value = actor.ClientId },
                new() { Value = (object?)actor.SignInId ?? DBNull.Value, NpgsqlDbType = NpgsqlDbType.Uuid },
            },
        };
        var called = new List<string>();
        await using (var reader = await page.ExecuteReaderAsync(cancel))
        {
            while (await reader.ReadAsync(cancel))
                called.Add(reader.GetString(0));
        }
        await using var after = new NpgsqlCommand("select count(*) from clients", connection);
        Assert.Equal(0L, await after.ExecuteScalarAsync(cancel));
        return called;
    }
}
