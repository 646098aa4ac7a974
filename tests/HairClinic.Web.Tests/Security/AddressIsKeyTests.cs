using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;
using HairClinic.Web.Tests.Features.MyHair;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using static HairClinic.Web.Tests.Features.MyHair.KeyScene;

namespace HairClinic.Web.Tests.Security;

/// <summary>A client's address is their key: whoever types another one into their record does not become them, however it gets there.</summary>
public sealed class AddressIsKeyTests(PgServer server)
{
    private const string Mine = "my.private@example.test";

    private readonly KeyScene _scene = new();

    [Fact]
    public async Task The_clients_own_confirmed_address_opens_everything()
    {
        await using var clinic = await _scene.OpenAsync(server);

        Assert.Equal(OwnReach.Everything, await OwnReach.OfAsync(clinic, (await SignInAsync(clinic, Theirs))!));
    }

    [Fact]
    public async Task An_address_the_desk_typed_opens_dates_only_and_does_so_a_year_later()
    {
        await using var clinic = await _scene.OpenAsync(server);

        await _scene.EditAsync(clinic, _scene.Desk(clinic), Mine);

        Assert.Equal(OwnReach.DatesOnly, await OwnReach.OfAsync(clinic, (await SignInAsync(clinic, Mine))!));
        clinic.Clock.Advance(Duration.FromDays(365));
        var later = (await SignInAsync(clinic, Mine))!;
        Assert.Equal(OwnReach.DatesOnly, (await OwnReach.OfAsync(clinic, later)) with { Dates = true });
    }

    [Fact]
    public async Task A_first_address_opens_dates_only()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await clinic.ReadAsync(async db =>
        {
            (await db.Clients.SingleAsync(c => c.Id == _scene.Client.Id, Cancel)).SetContact(null, null);
            await db.SaveChangesAsync(Cancel);
            return await db.OpeningAddresses.ExecuteDeleteAsync(Cancel);
        });

        await _scene.EditAsync(clinic, _scene.Desk(clinic), Mine);

        Assert.Equal(OwnReach.DatesOnly, await OwnReach.OfAsync(clinic, (await SignInAsync(clinic, Mine))!));
    }

    [Fact]
    public async Task Somebody_added_to_look_after_them_sees_dates_only()
    {
        await using var clinic = await _scene.OpenAsync(server);

        await _scene.AddGuardianAsync(clinic, _scene.Desk(clinic), Mine);

        Assert.Equal(OwnReach.DatesOnly, await OwnReach.OfAsync(clinic, (await SignInAsync(clinic, Mine))!));
        // The client's own is as it was.
        Assert.Equal(OwnReach.Everything, await OwnReach.OfAsync(clinic, (await SignInAsync(clinic, Theirs))!));
    }

    [Fact]
    public async Task A_record_with_an_address_of_ones_own_merged_into_the_clients_leads_nowhere()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var other = await IdOfAsync(clinic, "Q-7720");
        await _scene.EditAsync(clinic, _scene.Desk(clinic), Mine, other);
        await _scene.AddGuardianAsync(clinic, _scene.Desk(clinic), "me.again@example.test", other);
        await clinic.ReadAsync(db => ConfirmAsync(db));
        var signedIn = (await SignInAsync(clinic, Mine))!;
        var guardian = (await SignInAsync(clinic, "me.again@example.test"))!;

        await MergeAsync(clinic, _scene.Desk(clinic), kept: _scene.Client.Id, folded: other);

        await Assert.ThrowsAsync<StaleActorException>(() => OwnReach.OfAsync(clinic, signedIn));
        await Assert.ThrowsAsync<StaleActorException>(() => OwnReach.OfAsync(clinic, guardian));
        Assert.Null(await SignInAsync(clinic, Mine));
        // Whoever looks after the folded record looks after the kept one, as somebody new does.
        Assert.Equal(OwnReach.DatesOnly, await OwnReach.OfAsync(clinic, (await SignInAsync(clinic, "me.again@example.test"))!));
    }

    [Fact]
    public async Task Merging_the_client_into_a_record_of_ones_own_opens_nothing_of_theirs()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var own = await IdOfAsync(clinic, "Q-7720");
        await _scene.EditAsync(clinic, _scene.Desk(clinic), "me.before@example.test", own);
        await clinic.ReadAsync(db => ConfirmAsync(db));
        await _scene.EditAsync(clinic, _scene.Desk(clinic), Mine, own);
        await clinic.ReadAsync(db => ConfirmAsync(db));
        var me = (await SignInAsync(clinic, Mine))!;

        await MergeAsync(clinic, _scene.Desk(clinic), kept: own, folded: _scene.Client.Id);

        Assert.Equal(OwnReach.DatesOnly, await OwnReach.OfAsync(clinic, me));
        // Nor does an address that was confirmed before the merge confirm one that comes after it.
        await _scene.EditAsync(clinic, _scene.Desk(clinic), "me.later@example.test", own);
        Assert.DoesNotContain(await TellAsync(clinic), l => l.Text.Contains("my-new-address", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_change_ends_sign_ins_links_and_calendars_of_the_old_address_and_of_no_other()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await _scene.AddGuardianAsync(clinic, _scene.Desk(clinic), "guardian@example.test");
        var guardian = (await SignInAsync(clinic, "guardian@example.test"))!;
        var device = (await SignInAsync(clinic, Theirs))!;
        var link = await LinkAsync(clinic, Theirs);
        var signIns = await clinic.AsAsync(clinic.Job, s => Task.FromResult(s.GetRequiredService<ClientSessionStore>()));
        var feed = await FollowAsync(clinic, device);
        Assert.NotNull(await CalendarAsync(clinic, feed));

        await _scene.EditAsync(clinic, _scene.Desk(clinic), Mine);

        Assert.Null(await signIns.CheckAsync(device, Cancel));
        await Assert.ThrowsAsync<StaleActorException>(() => OwnReach.OfAsync(clinic, device));
        Assert.Null(await clinic.UseAsync<Web.Features.MyHair.OpenLink, object?>(clinic.Job, async s => await s.SaveAsync(link!, Cancel)));
        Assert.Null(await CalendarAsync(clinic, feed));
        Assert.NotNull(await signIns.CheckAsync(guardian, Cancel));
    }

    [Fact]
    public async Task Whoever_is_taken_away_is_out_at_once_with_their_calendar()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var id = await _scene.AddGuardianAsync(clinic, _scene.Desk(clinic), "guardian@example.test");
        var guardian = (await SignInAsync(clinic, "guardian@example.test"))!;
        var feed = await FollowAsync(clinic, guardian);

        await _scene.TakeGuardianAwayAsync(clinic, _scene.Desk(clinic), id);

        await Assert.ThrowsAsync<StaleActorException>(() => OwnReach.OfAsync(clinic, guardian));
        Assert.Null(await CalendarAsync(clinic, feed));
        Assert.Null(await SignInAsync(clinic, "guardian@example.test"));
    }

    [Fact]
    public async Task It_stands_in_the_log_under_who_did_it_and_the_client_reads_it()
    {
        await using var clinic = await _scene.OpenAsync(server);

        await _scene.EditAsync(clinic, _scene.Desk(clinic), Mine);
        // Letters are written in the order in which the addresses were entered.
        clinic.Clock.Advance(Duration.FromSeconds(1));
        await _scene.AddGuardianAsync(clinic, _scene.Of(clinic, StaffRole.Manager), "guardian@example.test");
        await TellAsync(clinic);

        var lines = await clinic.ReadAsync(db =>
            db.AccessNotes.Where(n => n.Action == AccessAction.ChangedOpeningAddress).OrderBy(n => n.Number).ToListAsync(Cancel)
        );
        Assert.Equal(
            [
                (_scene.Desk(clinic).PersonId, "FrontDesk", _scene.Client.Id),
                (_scene.Of(clinic, StaffRole.Manager).PersonId, "Manager", _scene.Client.Id),
            ],
            lines.Select(n => (n.ActorId!.Value, n.Role, n.ClientId!.Value))
        );
        // Told once: nothing is left to tell.
        await TellAsync(clinic);
        Assert.Equal(
            2,
            await clinic.ReadAsync(db => db.AccessNotes.CountAsync(n => n.Action == AccessAction.ChangedOpeningAddress, Cancel))
        );
    }

    [Fact]
    public async Task Erasing_the_client_leaves_no_address_and_no_letter_to_one()
    {
        await using var clinic = await _scene.OpenAsync(server);
        await _scene.EditAsync(clinic, _scene.Desk(clinic), Mine);
        await _scene.AddGuardianAsync(clinic, _scene.Desk(clinic), "guardian@example.test");
        await TellAsync(clinic);
        var slice = await clinic.UseAsync<Web.Features.Privacy.EraseClient, Web.Features.Privacy.EraseClient.Screen?>(
            _scene.Owner(clinic),
            s => s.OpenAsync(_scene.Client.Id, Cancel)
        );

        await clinic.UseAsync<Web.Features.Privacy.EraseClient, object>(
            _scene.Owner(clinic),
            async s =>
                await s.SaveAsync(
                    Guid.CreateVersion7(),
                    new()
                    {
                        ClientId = _scene.Client.Id,
                        Code = "Q-7719",
                        Expected = slice!.Counts,
                    },
                    Cancel
                )
        );

        Assert.Equal(0, await clinic.ReadAsync(db => db.OpeningAddresses.CountAsync(a => a.ClientId == _scene.Client.Id, Cancel)));
        Assert.DoesNotContain(await TellAsync(clinic), l => l.To is Theirs or Mine);
    }

    private static Task<string> FollowAsync(TestClinic clinic, ClientActor actor) =>
        clinic.UseAsync<Web.Features.MyHair.Preferences, string>(actor, s => s.StartCalendarFeedAsync(Cancel));

    private static Task<string?> CalendarAsync(TestClinic clinic, string address) =>
        clinic.UseAsync<Web.Features.MyHair.DatesFile, string?>(clinic.Job, s => s.OpenFeedAsync(address, Cancel));
}
