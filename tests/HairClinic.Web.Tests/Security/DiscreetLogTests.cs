using System.Net;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Microsoft.AspNetCore.Hosting;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Slice = HairClinic.Web.Features.Clients.AddClient;

namespace HairClinic.Web.Tests.Security;

/// <summary>The program runs through a day, good and bad, and what it wrote down is searched for whom it was about.</summary>
public sealed class DiscreetLogTests(PgServer server)
{
    private const string WrongPassword = "quite another phrase of mine";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Nobody_is_found_in_the_log_of_a_whole_day()
    {
        var log = new CapturedLog();
        await using var site = await ClinicSite.OpenAsync(
            server,
            builder =>
            {
                log.Catch(builder);
                // Nobody listens there: every letter fails.
                builder
                    .UseEnvironment("Production")
                    .UseSetting("Mail:Host", "127.0.0.1")
                    .UseSetting("Mail:Port", "9")
                    .UseSetting("Mail:From", "desk@practice.example");
                Broken.Break(builder, "Quillwort Marchbanks");
            }
        );
        var guest = site.Here.Own.Client;
        var desk = site.Here.Staff[StaffRole.FrontDesk];

        await ClinicSite.TryAsync(site.Browser(), ClinicSite.NameOf(desk), WrongPassword);
        await ClinicSite.TryAsync(site.Browser(), "nobody@example.test", WrongPassword);
        var browser = await site.SignInAsync(ClinicSite.NameOf(desk));
        foreach (var path in Looks(site))
            (await browser.GetAsync(path, Cancel)).Dispose();
        await EmptySite.SendAsync(site.Browser(), "/my-hair/ask-link", new Dictionary<string, string> { ["Input.Email"] = guest.Email! });
        var link = await site.LinkAsync(guest);
        var token = link.Split("token=")[1];
        var own = site.Browser();
        await EmptySite.SendAsync(own, link, new Dictionary<string, string>());
        await EmptySite.SendAsync(site.Browser(), link, new Dictionary<string, string>());
        (await own.GetAsync("/my-hair", Cancel)).Dispose();
        await RefuseAsync(site, desk, guest.Code);
        (await (await site.SignInAsync(ClinicSite.NameOf(site.Here.Staff[StaffRole.Manager]))).GetAsync(Broken.Page, Cancel)).Dispose();
        await SeenAsync(log, "failed at attempt");

        string[] secrets =
        [
            .. site.Here.Secrets,
            .. site.Elsewhere.Secrets,
            .. site.Here.Staff.Values.SelectMany(p => new[] { p.Name, ClinicSite.NameOf(p) }),
            Uri.EscapeDataString(guest.Name),
            guest.Email!.ToUpperInvariant(),
            "nobody@example.test",
            ClinicSite.Password,
            WrongPassword,
            token,
            "Zephyrine",
            "Quillwort",
        ];
        Assert.DoesNotContain(log.Lines, l => secrets.Any(s => l.Contains(s, StringComparison.OrdinalIgnoreCase)));
    }

    [Fact]
    public async Task What_broke_and_where_is_in_the_log_all_the_same()
    {
        var log = new CapturedLog();
        await using var site = await ClinicSite.OpenAsync(
            server,
            builder =>
            {
                log.Catch(builder);
                Broken.Break(builder.UseEnvironment("Production"), "a secret");
            }
        );

        var browser = await site.SignInAsync(ClinicSite.NameOf(site.Here.Staff[StaffRole.Manager]));
        await browser.GetAsync(Broken.Page, Cancel);

        var line = Assert.Single(log.Lines, l => l.Contains(nameof(FormatException), StringComparison.Ordinal));
        Assert.Contains(nameof(Broken), line, StringComparison.Ordinal);
        Assert.DoesNotContain("a secret", line, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Whoever_lost_their_role_is_sent_on_and_no_fault_is_written_down()
    {
        var log = new CapturedLog();
        await using var site = await ClinicSite.OpenAsync(server, builder => log.Catch(builder.UseEnvironment("Production")));
        var manager = site.Here.Staff[StaffRole.Manager];
        var browser = await site.SignInAsync(ClinicSite.NameOf(manager));
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/due", Cancel)).StatusCode);

        await site
            .Services.GetRequiredService<PracticeJobRunner>()
            .RunJobAsync(
                site.PracticeId,
                "test",
                async services =>
                {
                    await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                    (await db.People.SingleAsync(p => p.Id == manager.Id, Cancel)).Edit(manager.Name, StaffRole.FrontDesk);
                    return await db.SaveChangesAsync(Cancel);
                }
            );

        EmptySite.LeadsTo("/refresh-sign-in?returnTo=%2Fdue", await browser.GetAsync("/due", Cancel));
        Assert.DoesNotContain(log.Lines, l => l.Contains(nameof(StaleActorException), StringComparison.Ordinal));
        Assert.DoesNotContain(log.Lines, l => l.Contains("An error occurred", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_race_that_is_calculated_with_is_no_fault_and_what_nobody_calculated_with_is_one()
    {
        var log = new CapturedLog();
        await using var site = await ClinicSite.OpenAsync(server, log.Catch);

        await RefuseAsync(site, site.Here.Staff[StaffRole.FrontDesk], site.Here.Own.Client.Code);
        Assert.DoesNotContain(log.Lines, IsFault);

        await Assert.ThrowsAsync<DbUpdateException>(() =>
            site.InPracticeAsync(
                async (_, db) =>
                {
                    db.Chairs.Add(new Domain.Chairs.Chair(Guid.CreateVersion7(), Guid.CreateVersion7(), "In no salon", 1));
                    return await db.SaveChangesAsync(Cancel);
                }
            )
        );
        Assert.Contains(log.Lines, l => IsFault(l) && l.Contains("23503", StringComparison.Ordinal));

        static bool IsFault(string line) =>
            line.Contains("Exception", StringComparison.Ordinal) || line.Contains("Failed executing", StringComparison.Ordinal);
    }

    private static IEnumerable<string> Looks(ClinicSite site)
    {
        var guest = site.Here.Own;
        yield return "/due";
        yield return "/day";
        yield return $"/find?q={Uri.EscapeDataString(guest.Client.Name)}";
        yield return $"/find?q={Uri.EscapeDataString(guest.Client.Phone!)}";
        yield return $"/clients/{guest.Client.Id}/card";
        yield return $"/clients/{guest.Client.Id}/edit-client";
        yield return $"/visits/{guest.Visit.Id}/visit-details";
        yield return $"/clients/{site.Foreign.Own.Client.Id}/card";
        yield return "/practice/people";
        yield return $"/visits/book-visit?client={Uri.EscapeDataString(guest.Client.Name)}";
    }

    /// <summary>A save the database refuses: the code is another client's.</summary>
    private static async Task RefuseAsync(ClinicSite site, Person desk, string code)
    {
        var actor = new PersonActor(site.PracticeId, desk.Id, desk.Role, [site.Here.Salon.Id], site.Here.Salon.Id);
        await Assert.ThrowsAnyAsync<Exception>(() =>
            site
                .Services.GetRequiredService<PracticeJobRunner>()
                .RunAsAsync(
                    actor,
                    async services =>
                    {
                        var slice = services.GetRequiredService<Slice>();
                        var input = new Slice.Input
                        {
                            Code = code,
                            Name = "Zephyrine Zinnober",
                            Email = "zephyrine@example.test",
                            HomeSalonId = site.Here.Salon.Id,
                        };
                        return await slice.SaveAsync(Guid.CreateVersion7(), input, Cancel);
                    }
                )
        );
    }

    private static async Task SeenAsync(CapturedLog log, string words)
    {
        for (var i = 0; i < 150 && !log.Lines.Any(l => l.Contains(words, StringComparison.Ordinal)); i++)
            await Task.Delay(100, Cancel);
        Assert.Contains(log.Lines, l => l.Contains(words, StringComparison.Ordinal));
    }
}
