using HairClinic.Domain.Practices;
using HairClinic.Web.Practices;
using HairClinic.Web.Tests.Features.Practices;
using HairClinic.Web.Tests.Features.Practices.FirstRun;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Slice = HairClinic.Web.Features.Accounts.GiveAccount.GiveAccount;

namespace HairClinic.Web.Tests.Features.Accounts.GiveAccount;

public sealed class GiveAccountTests(PgServer server) : PracticeTest(server)
{
    private readonly PgServer server = server;

    [Fact]
    public async Task A_link_handed_over_opens_once_and_sets_a_password_that_signs_in()
    {
        await using var site = await AccountsSite.OpenAsync(server, roles: [StaffRole.Owner, StaffRole.Stylist]);
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
        await Assert.ThrowsAsync<Refusal>(() =>
            ManagerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), Input(clinic, Owner), Cancel))
        );
    }

    [Fact]
    public async Task A_name_somebody_signs_in_with_is_refused()
    {
        await using var clinic = await OpenAsync();
        var input = Input(clinic, Stylist);
        await OwnerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));

        await Assert.ThrowsAsync<Refusal>(() =>
            OwnerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input with { PersonId = Manager.Id }, Cancel))
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

    private static Slice.Input Input(TestClinic clinic, Person person) =>
        new() { PersonId = person.Id, Name = $"sten-{clinic.PracticeId:N}" };

    private Task<string?> StampAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => db.Users.Where(u => u.PersonId == Stylist.Id).Select(u => u.SecurityStamp).SingleAsync(Cancel));

    private static Task<string> LinkForAsync(AccountsSite site, StaffRole role)
    {
        var jobs = site.Services.GetRequiredService<PracticeJobs>();
        return jobs.RunAsync(
            site.PracticeId,
            "test",
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                var user = await db.Users.SingleAsync(u => u.UserName == role.ToString(), Cancel);
                return await services.GetRequiredService<Slice>().LinkAsync(user.Id, Cancel);
            }
        );
    }
}
