using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Clients.KeepGuardians.KeepGuardians;

namespace HairClinic.Web.Tests.Features.Clients.KeepGuardians;

public sealed class KeepGuardiansTests(PgServer server)
{
    private Client client = null!;
    private Person desk = null!;
    private Person elsewhere = null!;
    private Salon salon = null!;
    private Salon other = null!;

    [Fact]
    public async Task A_guardian_is_added_once_and_taken_away()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var at = clinic.Acting(desk, salon);
        var input = new Slice.Input
        {
            ClientId = client.Id,
            Name = "Cleo Fenwick",
            Email = "Cleo@Example.test",
        };
        var key = Guid.CreateVersion7();

        await SaveAsync(clinic, at, key, input);
        await SaveAsync(clinic, at, key, input);

        var kept = Assert.Single((await OpenAsync(clinic, at))!.Guardians);
        Assert.Equal("cleo@example.test", kept.Email);

        await SaveAsync(clinic, at, Guid.CreateVersion7(), new() { ClientId = client.Id, TakeAway = kept.Id });
        Assert.Equal(0, await clinic.ReadAsync(db => db.Guardians.CountAsync(TestContext.Current.CancellationToken)));
    }

    [Fact]
    public async Task The_desk_of_another_salon_finds_no_such_client()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var at = clinic.Acting(elsewhere, other);

        Assert.Null(await OpenAsync(clinic, at));
        await Refused.SayingAsync(
            "This client is not there any more. They may have been merged with another record.",
            () =>
                SaveAsync(
                    clinic,
                    at,
                    Guid.CreateVersion7(),
                    new()
                    {
                        ClientId = client.Id,
                        Name = "X",
                        Email = "x@example.test",
                    }
                )
        );
    }

    [Fact]
    public async Task A_salon_that_was_let_in_keeps_no_guardians()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                Lay(scene);
                scene.Book(client, scene.Services[0], scene.Chairs[1], elsewhere, scene.Now - NodaTime.Duration.FromDays(1));
            }
        );
        var at = clinic.Acting(elsewhere, other);
        var input = new Slice.Input
        {
            ClientId = client.Id,
            Name = "X",
            Email = "x@example.test",
        };

        Assert.Null(await OpenAsync(clinic, at));
        await Refused.SayingAsync(
            "This client is not there any more. They may have been merged with another record.",
            () => SaveAsync(clinic, at, Guid.CreateVersion7(), input)
        );
        Assert.NotNull(await OpenAsync(clinic, clinic.Acting(desk, salon)));
    }

    private void Lay(Scene scene)
    {
        scene.LayPractice("Practice under test");
        salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
        other = scene.OpenSalon("Canal Side", "Europe/London", "GBP", chairs: 1);
        desk = scene.Hire("Desk", StaffRole.FrontDesk, salon);
        elsewhere = scene.Hire("Other desk", StaffRole.FrontDesk, other);
        client = scene.Welcome("C-1", "Ada Fenwick", salon);
    }

    private Task<Slice.Screen?> OpenAsync(TestClinic clinic, Actor at) =>
        clinic.UseAsync<Slice, Slice.Screen?>(at, slice => slice.OpenAsync(client.Id, TestContext.Current.CancellationToken));

    private static Task<Slice.Outcome> SaveAsync(TestClinic clinic, Actor at, Guid key, Slice.Input input) =>
        clinic.UseAsync<Slice, Slice.Outcome>(at, slice => slice.SaveAsync(key, input, TestContext.Current.CancellationToken));
}
