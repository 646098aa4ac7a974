using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Demo.Scenes;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.MyHair.InviteClient;

namespace HairClinic.Web.Tests.Features.MyHair.InviteClient;

public sealed class InviteClientTests(PgServer server)
{
    private Client _reachable = null!;
    private Client _unreachable = null!;
    private Person _desk = null!;
    private Salon _salon = null!;

    [Fact]
    public async Task The_same_tap_twice_sends_one_letter()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var key = Guid.CreateVersion7();

        await SendAsync(clinic, key, _reachable.Id);
        await SendAsync(clinic, key, _reachable.Id);

        Assert.Equal(1, await clinic.ReadAsync(db => db.WorkItems.CountAsync(TestContext.Current.CancellationToken)));
    }

    [Fact]
    public async Task Without_an_address_it_says_so_and_sends_nothing()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        await Refused.SayingAsync(
            "This client has no e-mail address yet. Add it first.",
            () => SendAsync(clinic, Guid.CreateVersion7(), _unreachable.Id)
        );

        Assert.Equal(0, await clinic.ReadAsync(db => db.WorkItems.CountAsync(TestContext.Current.CancellationToken)));
    }

    [Fact]
    public async Task Whoever_wants_no_letters_is_sent_none_that_they_did_not_ask_for()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        await clinic.ReadAsync(db =>
        {
            var chosen = new ClientPreference(Guid.CreateVersion7(), _reachable.Id);
            chosen.SetLettersAndLanguage(letters: false, language: null);
            db.ClientPreferences.Add(chosen);
            return db.SaveChangesAsync(TestContext.Current.CancellationToken);
        });

        var refused = await Assert.ThrowsAsync<Refusal>(() => SendAsync(clinic, Guid.CreateVersion7(), _reachable.Id));

        Assert.StartsWith("This client wants no letters", refused.Message, StringComparison.Ordinal);
        Assert.Equal(0, await clinic.ReadAsync(db => db.WorkItems.CountAsync(TestContext.Current.CancellationToken)));
    }

    private void Lay(Scene scene)
    {
        scene.AddPractice("Practice under test");
        _salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
        _desk = scene.Hire("Desk", StaffRole.FrontDesk, _salon);
        _reachable = scene.AddClient("C-1", "Ada Fenwick", _salon, email: "ada@example.test");
        _unreachable = scene.AddClient("C-2", "Bo Larch", _salon);
    }

    private Task<Slice.Outcome> SendAsync(TestClinic clinic, Guid key, Guid clientId) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(_desk, _salon),
            slice => slice.SaveAsync(key, new Slice.Input(clientId), TestContext.Current.CancellationToken)
        );
}
