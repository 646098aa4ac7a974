using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Practices;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace HairClinic.Web.Tests.Fence;

/// <summary>What reads with its owner's rights, past the policies: one page for whoever acts as a client, and the grants that open.</summary>
public sealed class OwnersRightsTests(PgServer server)
{
    private Salon salon = null!;
    private Person owner = null!;
    private Person desk = null!;
    private Client ada = null!;
    private Client ben = null!;

    [Fact]
    public async Task The_own_page_is_there_for_the_acting_client_alone()
    {
        await using var clinic = await OpenAsync();

        Assert.Equal(["Ada Fenwick"], await CalledAsync(clinic, new ClientActor(clinic.PracticeId, ada.Id)));
        Assert.Equal(["Ben Arkwright"], await CalledAsync(clinic, new ClientActor(clinic.PracticeId, ben.Id)));
        Assert.Empty(await CalledAsync(clinic, clinic.Acting(owner, salon)));
        Assert.Empty(await CalledAsync(clinic, clinic.Acting(desk, salon)));
        Assert.Empty(await CalledAsync(clinic, new JobActor(clinic.PracticeId, "look")));
    }

    [Fact]
    public async Task The_grants_that_open_are_read_and_never_written_past_the_fence()
    {
        await using var clinic = await OpenAsync();

        Assert.Equal(2, await clinic.UseAsync<ClinicDbFactory, int>(clinic.Acting(desk, salon), CountAsync));
        Assert.Equal(0, await clinic.UseAsync<ClinicDbFactory, int>(new ClientActor(clinic.PracticeId, ada.Id), CountAsync));
        foreach (var deed in new[] { "delete from opened_clients", "update opened_clients set client_id = client_id" })
        {
            var refused = await Assert.ThrowsAsync<PostgresException>(() =>
                clinic.UseAsync<ClinicDbFactory, int>(clinic.Acting(desk, salon), Do)
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
                scene.LayPractice("Practice under test");
                salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
                owner = scene.Hire("Owner", StaffRole.Owner, salon);
                desk = scene.Hire("Desk", StaffRole.FrontDesk, salon);
                ada = scene.Welcome("C-1", "Ada Fenwick", salon);
                ben = scene.Welcome("C-2", "Ben Arkwright", salon);
            }
        );

    private static Task<List<string>> CalledAsync(TestClinic clinic, Actor actor) =>
        clinic.UseAsync<ClinicDbFactory, List<string>>(
            actor,
            async databases =>
            {
                await using var db = databases.Open();
                return await db
                    .Database.SqlQuery<string>($"select called as \"Value\" from own_page(null, now())")
                    .ToListAsync(TestContext.Current.CancellationToken);
            }
        );
}
