using System.Net;
using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Tests.Features.Accounts;
using HairClinic.Web.Tests.Security;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;
using NodaTime;
using static HairClinic.Web.Tests.Features.MyHair.KeyScene;
using Confirming = HairClinic.Web.Features.Clients.ConfirmAddress;
using Slice = HairClinic.Web.Features.MyHair.MyNewAddress;

namespace HairClinic.Web.Tests.Features.MyHair.MyNewAddress;

public sealed class MyNewAddressTests(PgServer server)
{
    private const string New = "zoe.new@example.test";

    private readonly KeyScene _scene = new();

    [Fact]
    public async Task The_old_address_is_told_discreetly_and_its_yes_opens_everything_once()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await _scene.EditAsync(clinic, _scene.Desk(clinic), New);

        var letter = Assert.Single(await TellAsync(clinic));

        Assert.Equal(Theirs, letter.To);
        Assert.Null(letter.ClientId);
        foreach (var word in new[] { "hair", "salon", "unit", "Elm Row", "Quillfeather", New })
            Assert.DoesNotContain(
                word,
                letter.Subject + letter.Text.Replace("/my-hair/", "", StringComparison.Ordinal),
                StringComparison.OrdinalIgnoreCase
            );
        var token = TokenIn(letter);
        Assert.Equal("z•••@example.test", (await OpenAsync(clinic, token))!.Address);
        Assert.Equal(ClientPageAccessLevel.DatesOnly, (await AddressAsync(clinic, New)).Opens);

        Assert.Equal(ClientPageAccessLevel.Everything, await SaveAsync(clinic, token, yes: true));

        Assert.Equal(OwnReach.Everything, await OwnReach.OfAsync(clinic, (await SignInAsync(clinic, New))!));
        Assert.Null(await SaveAsync(clinic, token, yes: false));
        Assert.Null(await OpenAsync(clinic, token));
        var line = await clinic.ReadAsync(db => db.AccessNotes.SingleAsync(n => n.Action == AccessAction.ConfirmedOpeningAddress, Cancel));
        Assert.Equal((AccessActorKind.Client, _scene.Client.Id), (line.ActorKind, line.ClientId!.Value));
    }

    [Fact]
    public async Task A_no_opens_nothing_even_if_it_is_entered_again_until_the_salon_has_spoken_to_the_client()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await _scene.EditAsync(clinic, _scene.Desk(clinic), New);
        var here = (await SignInAsync(clinic, New))!;
        var token = TokenIn(Assert.Single(await TellAsync(clinic), l => l.To == Theirs));

        Assert.Equal(ClientPageAccessLevel.Nothing, await SaveAsync(clinic, token, yes: false));

        await Assert.ThrowsAsync<Web.Fence.StaleActorException>(() => OwnReach.OfAsync(clinic, here));
        Assert.Null(await SignInAsync(clinic, New));
        await _scene.EditAsync(clinic, _scene.Desk(clinic), Theirs);
        await _scene.EditAsync(clinic, _scene.Desk(clinic), New);
        await _scene.AddGuardianAsync(clinic, _scene.Desk(clinic), New);
        Assert.Null(await SignInAsync(clinic, New));

        var address = await clinic.ReadAsync(db =>
            db.OpeningAddresses.SingleAsync(a => a.Email == New && a.EndedAt == null && a.GuardianId == null, Cancel)
        );
        await clinic.UseAsync<Confirming, Confirming.Outcome>(
            _scene.Of(clinic, StaffRole.Stylist),
            s => s.SaveAsync(Guid.CreateVersion7(), new(address.Id), Cancel)
        );
        Assert.Equal(OwnReach.Everything, await OwnReach.OfAsync(clinic, (await SignInAsync(clinic, New))!));
    }

    [Fact]
    public async Task Its_no_counts_after_somebody_else_confirmed_the_new_one_too()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await _scene.EditAsync(clinic, _scene.Desk(clinic), New);
        var token = TokenIn(Assert.Single(await TellAsync(clinic)));
        await clinic.UseAsync<Confirming, Confirming.Outcome>(
            _scene.Of(clinic, StaffRole.Stylist),
            async s => await s.SaveAsync(Guid.CreateVersion7(), new((await AddressAsync(clinic, New)).Id), Cancel)
        );

        Assert.Equal(ClientPageAccessLevel.Nothing, await SaveAsync(clinic, token, yes: false));

        Assert.Null(await SignInAsync(clinic, New));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_link_about_one_record_says_nothing_once_there_are_two_in_it(bool wasSent)
    {
        await using var clinic = await _scene.OpenAsync(server);
        await _scene.EditAsync(clinic, _scene.Desk(clinic), New);
        var letters = wasSent ? await TellAsync(clinic) : [];
        clinic.Clock.Advance(Duration.FromMinutes(1));

        await MergeAsync(clinic, _scene.Of(clinic, StaffRole.Manager), kept: _scene.Client.Id, folded: await IdOfAsync(clinic, "Q-7720"));

        foreach (var letter in letters)
            Assert.Null(await SaveAsync(clinic, TokenIn(letter), yes: true));
        Assert.DoesNotContain((await TellAsync(clinic)).Skip(letters.Count), l => l.Text.Contains("token", StringComparison.Ordinal));
        Assert.Equal(ClientPageAccessLevel.DatesOnly, (await AddressAsync(clinic, New)).Opens);
    }

    [Fact]
    public async Task Only_an_address_that_was_confirmed_is_asked()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await _scene.EditAsync(clinic, _scene.Desk(clinic), "first@example.test");
        await TellAsync(clinic);
        await _scene.EditAsync(clinic, _scene.Desk(clinic), "second@example.test");

        var letters = (await TellAsync(clinic)).Skip(1).ToList();

        // The one nobody confirmed is told, and cannot say yes: the one before it can.
        Assert.DoesNotContain("token", Assert.Single(letters, l => l.To == "first@example.test").Text, StringComparison.Ordinal);
        Assert.Contains("token", Assert.Single(letters, l => l.To == Theirs).Text, StringComparison.Ordinal);
        Assert.Equal(2, letters.Count);
    }

    [Fact]
    public async Task Somebody_who_looks_after_them_is_told_to_the_clients_own_address_and_told_when_it_is_over()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var guardian = await _scene.AddGuardianAsync(clinic, _scene.Desk(clinic), "guardian@example.test");
        var letter = Assert.Single(await TellAsync(clinic));
        Assert.Equal(Theirs, letter.To);
        Assert.Equal("Somebody Close", (await OpenAsync(clinic, TokenIn(letter)))!.Guardian);

        await _scene.TakeGuardianAwayAsync(clinic, _scene.Desk(clinic), guardian);

        Assert.Equal("guardian@example.test", (await TellAsync(clinic))[^1].To);
        Assert.Null(await SaveAsync(clinic, TokenIn(letter), yes: true));
    }

    [Fact]
    public async Task A_week_later_the_link_says_nothing_any_more_and_a_made_up_one_never_did()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await _scene.EditAsync(clinic, _scene.Desk(clinic), New);
        var token = TokenIn(Assert.Single(await TellAsync(clinic)));

        clinic.Clock.Advance(OpeningAddress.LinkLifetime);

        Assert.Null(await OpenAsync(clinic, token));
        Assert.Null(await SaveAsync(clinic, token, yes: true));
        foreach (var odd in new[] { null, "", "made-up", token[..^4] + "AAAA", new string('A', 5000) })
            Assert.Null(await SaveAsync(clinic, odd, yes: true));
        Assert.Equal(ClientPageAccessLevel.DatesOnly, (await AddressAsync(clinic, New)).Opens);
    }

    [Fact]
    public async Task It_is_written_in_the_clients_own_language()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await clinic.ReadAsync(async db =>
        {
            var chosen = new ClientPreference(Guid.CreateVersion7(), _scene.Client.Id);
            chosen.SetLettersAndLanguage(letters: false, "es-ES");
            db.ClientPreferences.Add(chosen);
            return await db.SaveChangesAsync(Cancel);
        });
        await _scene.EditAsync(clinic, _scene.Desk(clinic), New);

        Assert.Equal("Sobre su dirección de correo", Assert.Single(await TellAsync(clinic)).Subject);
    }

    [Fact]
    public async Task Over_the_wire_looking_does_nothing_and_the_buttons_do()
    {
        // The letter lies where it is written: nobody sends it meanwhile.
        await using var site = await ClinicSite.OpenAsync(
            server,
            builder => builder.ConfigureTestServices(services => services.RemoveAll<IHostedService>())
        );
        var client = site.Here.Own.Client;
        var token = await site.InPracticeAsync(
            async (services, db) =>
            {
                (await db.Clients.SingleAsync(c => c.Id == client.Id, Cancel)).SetContact(client.Phone, New);
                await db.SaveChangesAsync(Cancel);
                await services.GetRequiredService<AddressChangeNotices>().RunAsync(Cancel);
                var letters = await db.WorkItems.Where(w => w.Kind == WorkKind.SendMail).ToListAsync(Cancel);
                return TokenIn(
                    letters.Select(WorkItemFactory.ReadBody<Letter>).Single(l => l.Text.Contains("token", StringComparison.Ordinal))
                );
            }
        );
        var browser = site.Browser();

        for (var look = 0; look < 3; look++)
        {
            var page = WebUtility.HtmlDecode(await browser.GetStringAsync($"/my-hair/my-new-address?token={token}", Cancel));
            Assert.Contains("z•••@example.test", page, StringComparison.Ordinal);
        }
        var unchanged = await site.InPracticeAsync((_, db) => db.OpeningAddresses.SingleAsync(a => a.Email == New, Cancel));
        Assert.Equal(ClientPageAccessLevel.DatesOnly, unchanged.Opens);

        var fields = new Dictionary<string, string>
        {
            ["_handler"] = "my-new-address",
            ["Token"] = token,
            ["Answer"] = "no",
        };
        var answer = await AccountsSite.PostAsync(browser, $"/my-hair/my-new-address?token={token}", "/my-hair/my-new-address", fields);

        Assert.Contains(
            "opens nothing until",
            WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel)),
            StringComparison.Ordinal
        );
        var denied = await site.InPracticeAsync((_, db) => db.OpeningAddresses.SingleAsync(a => a.Email == New, Cancel));
        Assert.Equal(ClientPageAccessLevel.Nothing, denied.Opens);
    }

    private static Task<Slice.Screen?> OpenAsync(TestClinic clinic, string? token) =>
        clinic.UseAsync<Slice, Slice.Screen?>(clinic.Job, s => s.OpenAsync(token, Cancel));

    private static Task<ClientPageAccessLevel?> SaveAsync(TestClinic clinic, string? token, bool yes) =>
        clinic.UseAsync<Slice, ClientPageAccessLevel?>(clinic.Job, s => s.SaveAsync(token, yes, Cancel));
}
