using System.Net;
using AngleSharp.Html.Parser;
using HairClinic.Web.Features.Settings;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using NodaTime;
using Npgsql;

namespace HairClinic.Web.Tests.Features.Settings.FirstRun;

/// <summary>The whole program on an empty database of its own, asked over HTTP as a browser would.</summary>
public sealed class EmptySite : WebApplicationFactory<Program>
{
    private readonly PgServer _server;
    private readonly string _database;
    private readonly IClock? _clock;
    private readonly Action<IWebHostBuilder>? _more;

    private EmptySite(PgServer server, string database, IClock? clock, Action<IWebHostBuilder>? more) =>
        (_server, _database, _clock, _more) = (server, database, clock, more);

    public string Code => Services.GetRequiredService<SetupCode>().Value;

    /// <param name="more">Settings and services of this site alone.</param>
    public static async Task<EmptySite> OpenAsync(PgServer server, Action<IWebHostBuilder>? more = null, IClock? clock = null)
    {
        var database = $"empty_{Guid.NewGuid():N}";
        await using var connection = new NpgsqlConnection(server.Administrator);
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        await RunAsync($"create database {database} owner hairclinic_migrator template {PgServer.SiteTemplate}");
        await RunAsync($"grant connect on database {database} to hairclinic_program");
        return new EmptySite(server, database, clock, more);

        async Task RunAsync(string sql)
        {
            await using var command = new NpgsqlCommand(sql, connection);
            await command.ExecuteNonQueryAsync(TestContext.Current.CancellationToken);
        }
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (!disposing)
            return;
        // Hundreds of sites come and go: the pools of one that is gone would go on holding connections of the server all share.
        using var connection = new NpgsqlConnection(_server.Administrator);
        connection.Open();
        using var command = new NpgsqlCommand(
            $"select pg_terminate_backend(pid) from pg_stat_activity where datname = '{_database}'",
            connection
        );
        command.ExecuteNonQuery();
    }

    private string In(string connectionString) =>
        new NpgsqlConnectionStringBuilder(connectionString) { Database = _database, MaxPoolSize = 6 }.ToString();

    /// <summary>A browser that follows nothing by itself and keeps its cookies.</summary>
    public HttpClient Browser(string origin = "https://localhost")
    {
        var browser = CreateClient(
            new()
            {
                AllowAutoRedirect = false,
                HandleCookies = true,
                BaseAddress = new Uri(origin),
            }
        );
        browser.DefaultRequestHeaders.Accept.ParseAdd("text/html");
        return browser;
    }

    /// <summary>Fills in the form in the middle of a page that has those fields, and sends it.</summary>
    public static async Task<HttpResponseMessage> SendAsync(HttpClient browser, string page, IReadOnlyDictionary<string, string> filledIn)
    {
        var cancel = TestContext.Current.CancellationToken;
        var document = new HtmlParser().ParseDocument(await browser.GetStringAsync(page, cancel));
        var form = document
            .QuerySelectorAll("main form[method=post]")
            .First(f => filledIn.Keys.All(name => f.QuerySelector($"[name='{name}']") is not null));
        var fields = form.QuerySelectorAll("input[name], select[name]")
            .ToDictionary(i => i.GetAttribute("name")!, i => filledIn.GetValueOrDefault(i.GetAttribute("name")!, Chosen(i)));
        return await browser.PostAsync(
            form.GetAttribute("action") is { Length: > 0 } to ? to : page,
            new FormUrlEncodedContent(fields),
            cancel
        );

        static string Chosen(AngleSharp.Dom.IElement field) =>
            field.GetAttribute("value") ?? field.QuerySelector("option[selected]")?.GetAttribute("value") ?? "";
    }

    public static void LeadsTo(string path, HttpResponseMessage answer)
    {
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var location = answer.Headers.Location!;
        Assert.Equal(path, location.IsAbsoluteUri ? location.PathAndQuery : location.ToString());
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseSetting("ConnectionStrings:Program", In(_server.Connections.Program));
        builder.UseSetting("ConnectionStrings:Migrator", In(_server.Connections.Migrator!));
        builder.UseSetting("Keys:File", _server.KeyFile);
        builder.UseSetting("Mail:Folder", _server.MailFolder);
        builder.ConfigureLogging(l => l.ClearProviders());
        // Passwords are made slow to guess; a hundred tests that sign in need not wait for it.
        builder.ConfigureTestServices(services => services.PostConfigure<PasswordHasherOptions>(o => o.IterationCount = 1_000));
        if (_clock is not null)
            builder.ConfigureTestServices(services => services.AddSingleton(_clock));
        _more?.Invoke(builder);
    }
}
