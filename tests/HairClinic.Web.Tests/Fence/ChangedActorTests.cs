using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Tests.Fence;

/// <summary>Whoever acts is checked by the database at every connection it is told of them: what changed since the sign-in ends them at once.</summary>
public sealed class ChangedActorTests(PgServer server)
{
    private Salon _salon = null!;
    private Person _desk = null!;
    private Client _client = null!;

    [Fact]
    public async Task Whoever_left_can_read_nothing_more()
    {
        await using var clinic = await OpenAsync();
        Assert.Equal(1, await CountAsync(clinic, clinic.Acting(_desk, _salon)));

        await clinic.LayAsync(scene => scene.Db.People.Single(p => p.Id == _desk.Id).Leave());

        await Assert.ThrowsAsync<StaleActorException>(() => CountAsync(clinic, clinic.Acting(_desk, _salon)));
    }

    [Fact]
    public async Task A_role_or_a_salon_that_is_claimed_and_not_held_opens_nothing()
    {
        await using var clinic = await OpenAsync();
        var asOwner = clinic.Acting(_desk, _salon) with { StaffRole = StaffRole.Owner };
        var elsewhere = clinic.Acting(_desk, _salon) with { Salons = [_salon.Id, Guid.CreateVersion7()] };

        await Assert.ThrowsAsync<StaleActorException>(() => CountAsync(clinic, asOwner));
        await Assert.ThrowsAsync<StaleActorException>(() => CountAsync(clinic, elsewhere));
    }

    [Fact]
    public async Task A_client_who_left_sees_nothing_and_one_who_was_folded_sees_the_record_that_was_kept()
    {
        Client kept = null!;
        await using var clinic = await OpenAsync();
        var signIn = new ClientSignIn(Guid.NewGuid(), _client.Id, "ada@example.test", TestClinic.UsualNow);
        await clinic.LayAsync(scene =>
        {
            kept = scene.AddClient("C-2", "Ada Fenwick", _salon, email: "ada@example.test");
            scene.Db.Clients.Single(c => c.Id == _client.Id).SetContact(null, "ada@example.test");
            scene.Db.ClientSignIns.Add(signIn);
        });
        var own = new ClientActor(clinic.PracticeId, _client.Id, signIn.Id);
        Assert.Equal([_client.Id], await clinic.UseAsync<ClinicDbFactory, List<Guid>>(own, IdsAsync));
        await clinic.LayAsync(scene =>
            scene.Db.Clients.Single(c => c.Id == _client.Id).MergeInto(scene.Db.Clients.Single(c => c.Id == kept.Id))
        );

        Assert.Equal([kept.Id], await clinic.UseAsync<ClinicDbFactory, List<Guid>>(own, IdsAsync));
        // What is done in their name without a sign-in follows no merge.
        await Assert.ThrowsAsync<StaleActorException>(() => CountAsync(clinic, own with { SignInId = null }));
        await clinic.LayAsync(scene => scene.Db.Clients.Single(c => c.Id == kept.Id).Leave(new(2027, 2, 1)));
        await Assert.ThrowsAsync<StaleActorException>(() => CountAsync(clinic, own));
    }

    private Task<TestClinic> OpenAsync() =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("Practice under test");
                _salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
                _desk = scene.Hire("Desk", StaffRole.FrontDesk, _salon);
                _client = scene.AddClient("C-1", "Ada Fenwick", _salon);
            }
        );

    private static async Task<int> CountAsync(TestClinic clinic, Actor actor) =>
        (await clinic.UseAsync<ClinicDbFactory, List<Guid>>(actor, IdsAsync)).Count;

    private static async Task<List<Guid>> IdsAsync(ClinicDbFactory databases)
    {
        await using var db = databases.Open();
        return await db.Clients.Select(c => c.Id).ToListAsync(TestContext.Current.CancellationToken);
    }
}
