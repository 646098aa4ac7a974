using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Features.Clients;
using HairClinic.Web.Fence;
using HairClinic.Web.Tests.Features.MyHair;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using static HairClinic.Web.Tests.Features.MyHair.KeyScene;
using Slice = HairClinic.Web.Features.Clients.ConfirmAddress;

namespace HairClinic.Web.Tests.Features.Clients.ConfirmAddress;

public sealed class ConfirmAddressTests(PgServer server)
{
    private const string New = "zoe.new@example.test";

    private readonly KeyScene _scene = new();

    [Fact]
    public async Task A_stylist_confirms_what_the_desk_entered_and_it_opens_everything()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await _scene.EditAsync(clinic, _scene.Desk(clinic), New);
        var stylist = _scene.Of(clinic, StaffRole.Stylist);
        var row = Assert.Single((await OpenAsync(clinic, stylist))!.Addresses);
        Assert.Equal((New, "Desk", AddressConfirmerEligibility.Free), (row.Email, row.By, row.Right));

        await SaveAsync(clinic, stylist, row.Id);

        Assert.Equal(OwnReach.Everything, await OwnReach.OfAsync(clinic, (await SignInAsync(clinic, New))!));
        Assert.Empty((await OpenAsync(clinic, stylist))!.Addresses);
        var line = await clinic.ReadAsync(db => db.AccessNotes.SingleAsync(n => n.Action == AccessAction.ConfirmedOpeningAddress, Cancel));
        Assert.Equal((stylist.PersonId, _scene.Client.Id), (line.ActorId!.Value, line.ClientId!.Value));
    }

    [Fact]
    public async Task A_stylist_is_told_whose_address_it_is()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await _scene.AddGuardianAsync(clinic, _scene.Desk(clinic), New);

        Assert.Equal("Somebody Close", Assert.Single((await OpenAsync(clinic, _scene.Of(clinic, StaffRole.Stylist)))!.Addresses).Guardian);
    }

    [Fact]
    public async Task Whoever_entered_it_and_the_desk_are_refused_and_a_stylist_elsewhere_finds_nothing()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var manager = _scene.Of(clinic, StaffRole.Manager);
        await _scene.EditAsync(clinic, manager, New);
        var row = Assert.Single((await OpenAsync(clinic, manager))!.Addresses);
        Assert.Equal(AddressConfirmerEligibility.EnteredByThem, row.Right);

        await Refused.SayingAsync(
            "You entered this address yourself. Somebody else has to ask the client and confirm it.",
            () => SaveAsync(clinic, manager, row.Id)
        );
        await Refused.SayingAsync(
            "An owner, a manager or a stylist confirms an address, having asked the client.",
            () => SaveAsync(clinic, _scene.Desk(clinic), row.Id)
        );
        Assert.Null(await OpenAsync(clinic, _scene.StylistThere(clinic)));
        await Refused.SayingAsync("This address was changed meanwhile.", () => SaveAsync(clinic, _scene.StylistThere(clinic), row.Id));

        Assert.Equal(ClientPageAccessLevel.DatesOnly, (await AddressAsync(clinic, New)).Opens);
    }

    [Fact]
    public async Task A_salon_that_was_let_in_neither_changes_the_address_nor_confirms_it()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await _scene.LetInThereAsync(clinic);
        var there = _scene.StylistThere(clinic);
        var refused = await Assert.ThrowsAsync<Refusal>(() => _scene.EditAsync(clinic, there, New));
        Assert.Equal((EditClientRules.HomeAddress, "Email"), (refused.Sentence, refused.Field));
        await _scene.EditAsync(clinic, _scene.Desk(clinic), New);
        var row = Assert.Single((await OpenAsync(clinic, there))!.Addresses);

        Assert.Equal(AddressConfirmerEligibility.NotAtHome, row.Right);
        await Refused.SayingAsync("Their home salon confirms an address, having asked the client.", () => SaveAsync(clinic, there, row.Id));
        Assert.Equal(ClientPageAccessLevel.DatesOnly, (await AddressAsync(clinic, New)).Opens);
    }

    [Fact]
    public async Task An_owner_alone_confirms_what_they_entered_having_proved_anew_who_they_are()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var owner = _scene.Owner(clinic) with { SessionId = await SessionAsync(clinic, steppedUp: false) };
        await _scene.EditAsync(clinic, owner, New);
        var row = Assert.Single((await OpenAsync(clinic, owner))!.Addresses);
        Assert.Equal(AddressConfirmerEligibility.OnlyProvedAnew, row.Right);

        var asked = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, owner, row.Id));
        Assert.Equal(StepUpCheck.Sentence, asked.Sentence);
        var proved = owner with { SessionId = await SessionAsync(clinic, steppedUp: true) };
        await SaveAsync(clinic, proved, row.Id);

        Assert.Equal(AddressConfirmationWay.OwnerAlone, (await AddressAsync(clinic, New)).ConfirmedHow);
        var line = await clinic.ReadAsync(db => db.AccessNotes.SingleAsync(n => n.Action == AccessAction.ConfirmedOpeningAddress, Cancel));
        Assert.Equal((owner.PersonId, "entered by themselves; nobody else could"), (line.ActorId!.Value, line.Reason));
    }

    [Fact]
    public async Task As_soon_as_somebody_else_here_could_an_owner_confirms_no_more_what_they_entered()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var owner = _scene.Owner(clinic) with { SessionId = await SessionAsync(clinic, steppedUp: true) };
        await _scene.EditAsync(clinic, owner, New);
        var row = Assert.Single((await OpenAsync(clinic, owner))!.Addresses);
        // Whoever cannot sign in cannot confirm, and neither can a stylist to whom the client is closed.
        await GiveAccountAsync(clinic, _scene.StylistThere(clinic).PersonId);
        Assert.Equal(AddressConfirmerEligibility.OnlyProvedAnew, Assert.Single((await OpenAsync(clinic, owner))!.Addresses).Right);

        await GiveAccountAsync(clinic, _scene.Of(clinic, StaffRole.Stylist).PersonId);

        Assert.Equal(AddressConfirmerEligibility.EnteredByThem, Assert.Single((await OpenAsync(clinic, owner))!.Addresses).Right);
        await Refused.SayingAsync(
            "You entered this address yourself. Somebody else has to ask the client and confirm it.",
            () => SaveAsync(clinic, owner, row.Id)
        );
    }

    private static Task<AppUser> GiveAccountAsync(TestClinic clinic, Guid person) =>
        clinic.ReadAsync(async db =>
        {
            if (await db.Users.SingleOrDefaultAsync(u => u.PersonId == person, Cancel) is { } there)
                return there;
            var name = $"{person:N}";
            var user = new AppUser
            {
                Id = Guid.CreateVersion7(),
                PracticeId = clinic.PracticeId,
                PersonId = person,
                UserName = name,
                NormalizedUserName = name.ToUpperInvariant(),
            };
            db.Users.Add(user);
            await db.SaveChangesAsync(Cancel);
            return user;
        });

    private async Task<Guid> SessionAsync(TestClinic clinic, bool steppedUp)
    {
        var user = await GiveAccountAsync(clinic, _scene.Owner(clinic).PersonId);
        var begun = clinic.Clock.GetCurrentInstant() - (steppedUp ? Duration.Zero : SessionStore.Fresh);
        var session = new SignInSession(Guid.NewGuid(), user, SignInWay.Password, "Device under test", begun);
        await clinic.ReadAsync(db =>
        {
            db.SignInSessions.Add(session);
            return db.SaveChangesAsync(Cancel);
        });
        return session.Id;
    }

    private Task<Slice.Screen?> OpenAsync(TestClinic clinic, PersonActor actor) =>
        clinic.UseAsync<Slice, Slice.Screen?>(actor, s => s.OpenAsync(_scene.Client.Id, Cancel));

    private static Task<Slice.Outcome> SaveAsync(TestClinic clinic, PersonActor actor, Guid address) =>
        clinic.UseAsync<Slice, Slice.Outcome>(actor, s => s.SaveAsync(Guid.CreateVersion7(), new(address), Cancel));
}
