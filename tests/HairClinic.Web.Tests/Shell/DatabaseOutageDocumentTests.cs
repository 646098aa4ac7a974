using System.Net;
using HairClinic.Domain.Practices;
using HairClinic.Web.Features.Settings;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using HairClinic.Web.Tests.Security;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Web.Tests.Shell;

/// <summary>While the database is away people are told so, the log says it once, and it is over when it is over.</summary>
public sealed class DatabaseOutageDocumentTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Pages_say_that_the_book_cannot_be_reached_the_log_says_it_once_and_all_is_well_when_it_is_back()
    {
        using var line = new DatabaseLine();
        var log = new CapturedLog();
        await using var site = await ClinicSite.OpenAsync(
            server,
            builder =>
            {
                line.Into(builder.UseEnvironment("Production"));
                log.Catch(builder);
            }
        );
        var browser = await site.SignInAsync(ClinicSite.NameOf(site.Here.Staff[StaffRole.Manager]));
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/due", Cancel)).StatusCode);
        var stranger = site.Browser();
        await stranger.GetAsync("/sign-in", Cancel);

        line.Cut();
        site.Services.GetRequiredService<PracticePresence>().Forget();
        foreach (var page in new[] { "/due", "/sign-in", "/my-hair/ask-link", "/practice/overview" })
        {
            using var answer = await browser.GetAsync(page, Cancel);
            Assert.Equal((page, HttpStatusCode.ServiceUnavailable), (page, answer.StatusCode));
            Assert.Contains("The book cannot be reached", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
            Assert.Equal(TimeSpan.FromSeconds(5), answer.Headers.RetryAfter!.Delta);
            Assert.Contains(
                "frame-ancestors 'none'",
                answer.Headers.GetValues("Content-Security-Policy").Single(),
                StringComparison.Ordinal
            );
        }
        for (var i = 0; i < 20; i++)
        {
            using var form = new FormUrlEncodedContent([
                KeyValuePair.Create("Input.Name", "x"),
                KeyValuePair.Create("_handler", "sign-in"),
            ]);
            using var answer = await browser.PostAsync("/due", form, Cancel);
            Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.StatusCode);
        }
        Assert.Equal(HttpStatusCode.ServiceUnavailable, (await browser.GetAsync("/ready", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await browser.GetAsync("/alive", Cancel)).StatusCode);

        line.Mend();
        var since = System.Diagnostics.Stopwatch.StartNew();
        while ((await browser.GetAsync("/due", Cancel)).StatusCode != HttpStatusCode.OK && since.Elapsed < TimeSpan.FromSeconds(30))
            await Task.Delay(100, Cancel);
        Assert.InRange(since.Elapsed, TimeSpan.Zero, TimeSpan.FromSeconds(5));
        while (!log.Lines.Any(l => l.Contains("answers again", StringComparison.Ordinal)) && since.Elapsed < TimeSpan.FromSeconds(30))
            await Task.Delay(100, Cancel);

        Assert.Single(log.Lines, l => l.Contains("The database cannot be reached", StringComparison.Ordinal));
        Assert.Single(log.Lines, l => l.Contains("The database answers again", StringComparison.Ordinal));
        Assert.DoesNotContain(log.Lines, l => l.Contains("Refused:", StringComparison.Ordinal));
        Assert.DoesNotContain(
            log.Lines,
            l => l.Contains("Npgsql", StringComparison.Ordinal) && !l.Contains("cannot be reached", StringComparison.Ordinal)
        );
        Assert.DoesNotContain(log.Lines, l => l.Contains("stumbled", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_fault_of_another_kind_behind_a_form_is_no_forged_form()
    {
        var log = new CapturedLog();
        await using var site = await ClinicSite.OpenAsync(
            server,
            builder =>
            {
                log.Catch(builder);
                // Something breaks before anybody asks for a form's mark; the page that stands in for it is asked without one.
                builder
                    .UseEnvironment("Production")
                    .ConfigureTestServices(s =>
                        s.AddScoped(services =>
                            services.GetRequiredService<IHttpContextAccessor>().HttpContext?.Request.Path == "/due"
                                ? throw new FormatException("a secret")
                                : ActivatorUtilities.CreateInstance<PracticePresence>(services)
                        )
                    );
            }
        );

        using var form = new FormUrlEncodedContent([KeyValuePair.Create("a", "b")]);
        using var answer = await site.Browser().PostAsync("/due", form, Cancel);

        Assert.Equal(HttpStatusCode.InternalServerError, answer.StatusCode);
        Assert.DoesNotContain(log.Lines, l => l.Contains("Refused:", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("http://127.0.0.1", "/alive", HttpStatusCode.OK)]
    [InlineData("http://127.0.0.1", "/ready", HttpStatusCode.OK)]
    [InlineData("http://172.18.0.3:8080", "/ready", HttpStatusCode.OK)]
    [InlineData("http://localhost", "/ready", HttpStatusCode.OK)]
    [InlineData("http://[::1]", "/ready", HttpStatusCode.OK)]
    [InlineData("http://book.example", "/ready", HttpStatusCode.OK)]
    [InlineData("http://127.0.0.1", "/sign-in", HttpStatusCode.BadRequest)]
    [InlineData("http://other.example", "/ready", HttpStatusCode.BadRequest)]
    public async Task A_probe_by_address_is_answered_whatever_names_the_site_answers_to(string origin, string path, HttpStatusCode status)
    {
        await using var site = await EmptySite.OpenAsync(server, builder => builder.UseSetting("AllowedHosts", "book.example"));

        using var answer = await site.Browser(origin).GetAsync(path, Cancel);

        Assert.Equal(status, answer.StatusCode);
    }
}
