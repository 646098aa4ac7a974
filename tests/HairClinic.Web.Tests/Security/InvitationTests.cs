using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Fence;
using HairClinic.Web.Tests.Features.MyHair;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Npgsql;
using static HairClinic.Web.Tests.Features.MyHair.KeyScene;
using Invite = HairClinic.Web.Features.MyHair.InviteClient;
using Open = HairClinic.Web.Features.MyHair.OpenLink;

namespace HairClinic.Web.Tests.Security;

/// <summary>An invitation lies in a mailbox for days: it opens dates only, also where the address opens everything, and the database keeps it so.</summary>
public sealed class InvitationTests(PgServer server)
{
    private readonly KeyScene _scene = new();

    [Fact]
    public async Task It_opens_dates_only_by_an_address_that_is_confirmed_until_they_ask_for_a_link_themselves()
    {
        await using var clinic = await _scene.OpenAsync(server);

        var invited = (await OpenAsync(clinic, await InviteAsync(clinic)))!;

        Assert.Equal(OwnReach.DatesOnly, await OwnReach.OfAsync(clinic, invited.Actor));
        Assert.False(invited.OpensAll);
        Assert.Equal(OwnReach.Everything, await OwnReach.OfAsync(clinic, (await SignInAsync(clinic, Theirs))!));
        // The device they were invited on learns nothing from that.
        Assert.Equal(OwnReach.DatesOnly, await OwnReach.OfAsync(clinic, invited.Actor));
    }

    [Fact]
    public async Task It_is_no_proof_of_who_they_are_and_stays_one_whichever_page_it_shows()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var invited = (await OpenAsync(clinic, await InviteAsync(clinic)))!.Actor;

        Assert.False(await clinic.UseAsync<ClientSessionStore, bool>(clinic.Job, s => s.IsFreshAsync(invited, Cancel)));
        Assert.False(
            (await clinic.UseAsync<ClientSessionStore, ActiveClientSignIn?>(clinic.Job, s => s.CheckAsync(invited, Cancel)))!.OpensAll
        );
        Assert.False(
            (
                await clinic.UseAsync<ClientSessionStore, ActiveClientSignIn?>(
                    clinic.Job,
                    s => s.SwitchClientAsync(invited, invited.ClientId, Cancel)
                )
            )!.OpensAll
        );
    }

    [Fact]
    public async Task The_database_makes_no_more_of_it()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var invited = (await OpenAsync(clinic, await InviteAsync(clinic)))!.Actor;

        var refused = await Assert.ThrowsAsync<PostgresException>(() =>
            clinic.ReadAsync(db =>
                db.ClientSignIns.Where(s => s.Id == invited.SignInId)
                    .ExecuteUpdateAsync(set => set.SetProperty(s => s.Invitation, false), Cancel)
            )
        );

        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, refused.SqlState);
        await Assert.ThrowsAsync<PostgresException>(() =>
            clinic.ReadAsync(db =>
                db.SignInLinks.Where(l => l.PracticeId == clinic.PracticeId && l.Invitation)
                    .ExecuteUpdateAsync(set => set.SetProperty(l => l.Invitation, false), Cancel)
            )
        );
    }

    [Fact]
    public async Task It_lives_seven_days_and_opens_once_where_a_link_asked_for_lives_a_quarter_of_an_hour()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var (invitation, asked) = (await InviteAsync(clinic), (await LinkAsync(clinic, Theirs))!);

        clinic.Clock.Advance(Duration.FromMinutes(16));
        Assert.Null(await OpenAsync(clinic, asked));
        clinic.Clock.Advance(Duration.FromDays(7) - Duration.FromMinutes(17));
        Assert.NotNull(await OpenAsync(clinic, invitation));
        Assert.Null(await OpenAsync(clinic, invitation));

        var late = await InviteAsync(clinic);
        clinic.Clock.Advance(Duration.FromDays(7));
        Assert.Null(await OpenAsync(clinic, late));
    }

    [Fact]
    public async Task A_second_one_ends_the_first_and_no_link_they_asked_for()
    {
        await using var clinic = await _scene.OpenAsync(server);
        var asked = (await LinkAsync(clinic, Theirs))!;
        var first = await InviteAsync(clinic);

        var second = await InviteAsync(clinic);

        Assert.Null(await OpenAsync(clinic, first));
        Assert.NotNull(await OpenAsync(clinic, second));
        Assert.NotNull(await OpenAsync(clinic, asked));
    }

    [Fact]
    public async Task Its_letter_says_how_long_it_lives_and_where_to_ask_for_more()
    {
        await using var clinic = await _scene.OpenAsync(server);

        await InviteAsync(clinic);

        var letter = (await LettersAsync(clinic))[^1];
        Assert.Contains("within 7 days", letter.Text, StringComparison.Ordinal);
        Assert.Contains("/my-hair/ask-link", letter.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("15 minutes", letter.Text, StringComparison.Ordinal);
    }

    private async Task<string> InviteAsync(TestClinic clinic)
    {
        await clinic.UseAsync<Invite, Invite.Outcome>(
            _scene.Desk(clinic),
            s => s.SaveAsync(Guid.CreateVersion7(), new(_scene.Client.Id), Cancel)
        );
        return TokenIn((await LettersAsync(clinic))[^1]);
    }

    private static Task<ActiveClientSignIn?> OpenAsync(TestClinic clinic, string token) =>
        clinic.UseAsync<Open, ActiveClientSignIn?>(clinic.Job, async s => (await s.SaveAsync(token, Cancel))?.SignIn);
}
