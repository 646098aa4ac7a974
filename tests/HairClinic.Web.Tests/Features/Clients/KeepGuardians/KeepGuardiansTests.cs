using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Clients.KeepGuardians;

namespace HairClinic.Web.Tests.Features.Clients.KeepGuardians;

public sealed class KeepGuardiansTests(PgServer server)
{
    private Client _client = null!;
    private Person _desk = null!;
    private Person _elsewhere = null!;
    private Salon _salon = null!;
    private Salon _other = null!;

    [Fact]
    public async Task A_guardian_is_added_once_and_taken_away()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var at = clinic.Acting(_desk, _salon);
        var input = new Slice.Input
        {
            ClientId = _client.Id,
            Name = "Cleo Fenwick",
            Email = "Cleo@Example.test",
        };
        var key = Guid.CreateVersion7();

        await SaveAsync(clinic, at, key, input);
        await SaveAsync(clinic, at, key, input);

        var kept = Assert.Single((await OpenAsync(clinic, at))!.Guardians);
        Assert.Equal("cleo@example.test", kept.Email);

        await SaveAsync(clinic, at, Guid.CreateVersion7(), new() { ClientId = _client.Id, TakeAway = kept.Id });
        Assert.Equal(0, await clinic.ReadAsync(db => db.Guardians.CountAsync(TestContext.Current.CancellationToken)));
    }

    [Fact]
    public async Task The_desk_of_another_salon_finds_no_such_client()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var at = clinic.Acting(_elsewhere, _other);

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
                        ClientId = _client.Id,
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
                scene.Book(_client, scene.Services[0], scene.Chairs[1], _elsewhere, scene.Now - NodaTime.Duration.FromDays(1));
            }
        );
        var at = clinic.Acting(_elsewhere, _other);
        var input = new Slice.Input
        {
            ClientId = _client.Id,
            Name = "X",
            Email = "x@example.test",
        };

        Assert.Null(await OpenAsync(clinic, at));
        await Refused.SayingAsync(
            "This client is not there any more. They may have been merged with another record.",
            () => SaveAsync(clinic, at, Guid.CreateVersion7(), input)
        );
        Assert.NotNull(await OpenAsync(clinic, clinic.Acting(_desk, _salon)));
    }

    private void Lay(Scene scene)
    {
        scene.AddPractice("Practice under test");
        _salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
        _other = scene.OpenSalon("Canal Side", "Europe/London", "GBP", chairs: 1);
        _desk = scene.Hire("Desk", StaffRole.FrontDesk, _salon);
        _elsewhere = scene.Hire("Other desk", StaffRole.FrontDesk, _other);
        _client = scene.AddClient("C-1", "Ada Fenwick", _salon);
    }

    private Task<Slice.Screen?> OpenAsync(TestClinic clinic, Actor at) =>
        clinic.UseAsync<Slice, Slice.Screen?>(at, slice => slice.OpenAsync(_client.Id, TestContext.Current.CancellationToken));

    private static Task<Slice.Outcome> SaveAsync(TestClinic clinic, Actor at, Guid key, Slice.Input input) =>
        clinic.UseAsync<Slice, Slice.Outcome>(at, slice => slice.SaveAsync(key, input, TestContext.Current.CancellationToken));
}
