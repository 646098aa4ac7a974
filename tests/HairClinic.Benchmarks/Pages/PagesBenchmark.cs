using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using HairClinic.Benchmarks.Nightly;
using HairClinic.EmbeddedPostgres;
using HairClinic.Web;
using HairClinic.Web.Data;
using HairClinic.Web.Demo;
using HairClinic.Web.Learning;
using HairClinic.Web.Workers;
using Microsoft.AspNetCore.Builder;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using NodaTime;
using Npgsql;

namespace HairClinic.Benchmarks.Pages;

/// <summary>
/// Every page of the staff as an owner gets it over HTTP, beside an empty one: the demo practice after its nightly run, or with
/// <c>--clients 30000</c> its book so many times over. <c>--rounds</c> says how often each is asked.
/// </summary>
internal static partial class PagesBenchmark
{
    private const double Goal = 3;
    private const string Due = "/due";
    private const string Empty = "/refused";

    public static Task RunAsync(Report report) =>
        ClinicOfItsOwn.UseAsync(
            "pages",
            async (app, server) =>
            {
                var clients = await LayAsync(app, server, report.Option("clients", 300));
                await app.StartAsync();
                await QuietAsync(app);
                await CompareAsync(report, app, clients);
                await app.StopAsync();
            }
        );

    /// <returns>How many clients there are.</returns>
    private static async Task<int> LayAsync(WebApplication app, EmbeddedServer server, int wanted)
    {
        var demo = await app.Services.GetRequiredService<DemoSeeder>().FillAsync(CancellationToken.None);
        var jobs = app.Services.GetRequiredService<PracticeJobRunner>();
        await jobs.RunJobAsync(demo!.PracticeId, "benchmark", NightlyBenchmark.CalculateAsync);
        var administrator = new NpgsqlConnectionStringBuilder(server.Administrator) { Database = "hairclinic" }.ConnectionString;
        var clients = await CopiedBook.MultiplyAsync(administrator, demo.PracticeId, wanted);
        // Plans are copied with their clients; what pages show of all of them is worked out as at night.
        await jobs.RunJobAsync(
            demo.PracticeId,
            "benchmark",
            async scope =>
            {
                await scope.GetRequiredService<PageResultRefresher>().RunAsync(CancellationToken.None);
                return true;
            }
        );
        return clients;
    }

    /// <summary>Waits for what the program sees to by itself after its start: every open bond is dated anew.</summary>
    private static async Task QuietAsync(WebApplication app)
    {
        var jobs = app.Services.GetRequiredService<PracticeJobRunner>();
        var practice = (await jobs.PracticeIdsAsync(CancellationToken.None))[0];
        for (var (tries, quiet) = (0, 0); tries < 300 && quiet < 5; tries++)
        {
            await Task.Delay(TimeSpan.FromSeconds(1));
            var now = SystemClock.Instance.GetCurrentInstant();
            var due = await jobs.RunJobAsync(
                practice,
                "benchmark",
                async scope =>
                {
                    await using var db = scope.GetRequiredService<ClinicDbFactory>().Open();
                    return await db.WorkItems.AnyAsync(w => w.DoneAt == null && w.NotBefore <= now);
                }
            );
            quiet = due ? 0 : quiet + 1;
        }
    }

    private static async Task CompareAsync(Report report, WebApplication app, int clients)
    {
        using var browser = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = new Uri(app.Urls.First()) };
        browser.DefaultRequestHeaders.Accept.ParseAdd("text/html");
        await SignInAsync(browser);
        var pages = await StaffPages.OfAsync(app.Services, Due, Empty);
        var answers = new Dictionary<string, HttpStatusCode>();
        var times = await Rounds.TimeAsync(
            report.Option("rounds", 7),
            [.. pages.Select<StaffPage, Func<Task>>(page => async () => answers[page.Name] = await OpenAsync(browser, page.Address))]
        );
        var medians = pages.Zip(times).ToDictionary(p => p.First.Name, p => Rounds.Median(p.Second));
        var (due, empty) = (medians[Due], medians[Empty]);
        report.Say($"pages: {clients:N0} clients; median ms of {times[0].Count} rounds, times Due, times an empty page");
        foreach (var (name, median) in medians.OrderByDescending(m => m.Value))
        {
            var not = answers[name] == HttpStatusCode.OK || name == Empty ? "" : $"  (answers {(int)answers[name]})";
            report.Say(
                string.Create(CultureInfo.InvariantCulture, $"{median, 9:F1}  {median / due, 6:F2}  {median / empty, 7:F1}  {name}{not}")
            );
        }
        var slow = medians.Where(m => m.Value > Goal * due).Select(m => m.Key).ToList();
        report.Say(
            slow.Count == 0 ? $"  each within {Goal} times Due: met" : $"  beyond {Goal} times Due: {string.Join(", ", slow)}: not met"
        );
    }

    private static async Task<HttpStatusCode> OpenAsync(HttpClient browser, string address)
    {
        while (true)
        {
            using var answer = await browser.GetAsync(new Uri(address, UriKind.Relative));
            await answer.Content.ReadAsByteArrayAsync();
            if (answer.StatusCode != HttpStatusCode.TooManyRequests)
                return answer.StatusCode;
            // Somebody who asks this often is held back; that round counts for too much, and the median leaves it out.
            await Task.Delay(answer.Headers.RetryAfter?.Delta ?? TimeSpan.FromSeconds(1));
        }
    }

    private static async Task SignInAsync(HttpClient browser)
    {
        var page = await browser.GetStringAsync(new Uri("/sign-in", UriKind.Relative));
        var fields = new Dictionary<string, string>
        {
            ["_handler"] = "sign-in",
            ["__RequestVerificationToken"] = Token().Match(page).Groups[1].Value,
            ["Input.Name"] = DemoAccounts.All.First(a => a.Role == "Owner").Name,
            ["Password"] = DemoAccounts.Password,
            ["Input.Password"] = DemoAccounts.Password,
        };
        using var answer = await browser.PostAsync(new Uri("/sign-in", UriKind.Relative), new FormUrlEncodedContent(fields));
        if (answer.StatusCode != HttpStatusCode.Redirect)
            throw new InvalidOperationException($"The owner of the demo was not let in: {(int)answer.StatusCode}.");
    }

    [GeneratedRegex("""name="__RequestVerificationToken" value="([^"]+)""")]
    private static partial Regex Token();
}
