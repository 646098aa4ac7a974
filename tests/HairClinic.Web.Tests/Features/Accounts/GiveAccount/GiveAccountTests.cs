using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Tests.Features.Settings;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Slice = HairClinic.Web.Features.Accounts.GiveAccount;

namespace HairClinic.Web.Tests.Features.Accounts.GiveAccount;

public sealed class GiveAccountTests(PgServer server) : PracticeTest(server)
{
    private readonly PgServer _server = server;

    [Fact]
    public async Task A_link_handed_over_opens_once_and_sets_a_password_that_signs_in()
    {
        await using var site = await AccountsSite.OpenAsync(_server, roles: [StaffRole.Owner, StaffRole.Stylist]);
        var link = await LinkForAsync(site, StaffRole.Stylist);
        var browser = site.Browser();
        var answers = new Dictionary<string, string>
        {
            ["Input.Password"] = "seven copper kettles",
            ["Input.Again"] = "seven copper kettles",
        };

        var first = await (await EmptySite.SendAsync(browser, link, answers)).Content.ReadAsStringAsync(Cancel);
        var second = await (await EmptySite.SendAsync(browser, link, answers)).Content.ReadAsStringAsync(Cancel);

        Assert.Contains("Your password is set", first, StringComparison.Ordinal);
        Assert.Contains("This link was used already", second, StringComparison.Ordinal);
        await site.SignInAsync(StaffRole.Stylist, "seven copper kettles");
    }

    [Fact]
    public async Task Neither_password_nor_link_can_be_read_from_what_is_saved_with_the_deed()
    {
        await using var clinic = await OpenAsync();
        var key = Guid.CreateVersion7();
        var input = Input(clinic, Stylist) with { Password = "seven copper kettles" };

        await ManagerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(key, input, Cancel));
        // The same tap with another password is the same deed: the kept hash does not depend on it.
        await ManagerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(key, input with { Password = "eight copper kettles" }, Cancel));

        var kept = await clinic.ReadAsync(db => db.WriteKeys.SingleAsync(k => k.Id == key, Cancel));
        Assert.DoesNotContain("token", kept.Answer, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("kettles", kept.Answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_manager_lets_in_neither_owners_nor_other_managers()
    {
        await using var clinic = await OpenAsync();

        Assert.Null(await ManagerAsync<Slice, Slice.Screen?>(clinic, s => s.OpenAsync(Owner.Id, Cancel)));
        await Refused.SayingAsync(
            "Only an owner lets owners and managers in.",
            () => ManagerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), Input(clinic, Owner), Cancel))
        );
    }

    [Fact]
    public async Task A_name_somebody_signs_in_with_is_refused()
    {
        await using var clinic = await OpenAsync();
        var input = Input(clinic, Stylist);
        await OwnerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));

        await Refused.SayingAsync(
            "Somebody signs in as {0} already. Choose another name.",
            () =>
                OwnerAsync<Slice, Slice.Outcome>(
                    clinic,
                    s => s.SaveAsync(Guid.CreateVersion7(), input with { PersonId = Manager.Id }, Cancel)
                )
        );
    }

    [Fact]
    public async Task Signing_someone_out_everywhere_changes_their_stamp()
    {
        await using var clinic = await OpenAsync();
        await OwnerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), Input(clinic, Stylist), Cancel));
        var before = await StampAsync(clinic);

        await ManagerAsync<Slice, bool>(
            clinic,
            async s =>
            {
                await s.EndSessionsAsync(Guid.CreateVersion7(), Stylist.Id, Cancel);
                return true;
            }
        );

        Assert.NotEqual(before, await StampAsync(clinic));
    }

    [Fact]
    public async Task Whoever_anothers_hand_gives_a_password_or_address_is_told_at_the_old_one_and_it_stands_in_the_log()
    {
        await using var clinic = await OpenAsync();
        var input = Input(clinic, Stylist) with { Email = "sten@example.test" };
        await OwnerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
        Assert.Empty(await LettersAsync(clinic));

        var changed = input with { Email = "managers.own@example.test", Password = "seven copper kettles" };
        var outcome = await ManagerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), changed, Cancel));

        var letter = Assert.Single(await LettersAsync(clinic));
        Assert.Equal(("sten@example.test", AccountNotices.Subject), (letter.To, letter.Subject));
        Assert.DoesNotContain("kettles", letter.Text, StringComparison.Ordinal);
        // A link with which a password is chosen is told likewise, to the address that stands now.
        await ManagerAsync<Slice, string>(clinic, s => s.IssuePasswordLinkAsync(outcome.UserId, Cancel));
        Assert.Equal("managers.own@example.test", (await LettersAsync(clinic))[^1].To);
        var lines = await clinic.ReadAsync(db =>
            db.AccessNotes.Where(n => n.Action == AccessAction.ChangedSignIn).OrderBy(n => n.Number).ToListAsync(Cancel)
        );
        Assert.Equal(
            [(Owner.Id, Stylist.Id), (Manager.Id, Stylist.Id), (Manager.Id, Stylist.Id)],
            lines.Select(n => (n.ActorId!.Value, n.SubjectId!.Value))
        );
        // Nothing changed: nothing to tell.
        await ManagerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), changed with { Password = null }, Cancel));
        Assert.Equal(2, (await LettersAsync(clinic)).Count);
    }

    private static async Task<IReadOnlyList<Letter>> LettersAsync(TestClinic clinic)
    {
        var items = await clinic.ReadAsync(db =>
            db.WorkItems.Where(w => w.Kind == WorkKind.SendMail).OrderBy(w => w.AskedAt).ThenBy(w => w.Id).ToListAsync(Cancel)
        );
        return [.. items.Select(WorkItemFactory.ReadBody<Letter>)];
    }

    private static Slice.Input Input(TestClinic clinic, Person person) =>
        new() { PersonId = person.Id, Name = $"sten-{clinic.PracticeId:N}" };

    private Task<string?> StampAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => db.Users.Where(u => u.PersonId == Stylist.Id).Select(u => u.SecurityStamp).SingleAsync(Cancel));

    private static Task<string> LinkForAsync(AccountsSite site, StaffRole role)
    {
        var jobs = site.Services.GetRequiredService<PracticeJobRunner>();
        return jobs.RunJobAsync(
            site.PracticeId,
            "test",
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                var user = await db.Users.SingleAsync(u => u.UserName == role.ToString(), Cancel);
                return await services.GetRequiredService<Slice>().IssuePasswordLinkAsync(user.Id, Cancel);
            }
        );
    }
}
