using System.Net;
using HairClinic.Domain.Practices;
using Microsoft.AspNetCore.Hosting;

namespace HairClinic.Web.Tests.Security;

public sealed class ErrorPageTests(ErrorPageTests.BreakingSite breaking) : IClassFixture<ErrorPageTests.BreakingSite>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Whatever_breaks_tells_nothing_of_why()
    {
        var manager = await breaking.SignInAsync(StaffRole.Manager);

        using var answer = await manager.GetAsync(Broken.Page, Cancel);

        var page = await answer.Content.ReadAsStringAsync(Cancel);
        Assert.Equal(HttpStatusCode.InternalServerError, answer.StatusCode);
        Assert.DoesNotMatch("quillwort|Exception|   at |HairClinic\\.(Web\\.Features|Domain)", page);
        Assert.Contains("frame-ancestors 'none'", answer.Headers.GetValues("Content-Security-Policy").Single(), StringComparison.Ordinal);
        Assert.True(answer.Headers.CacheControl!.NoStore);
    }

    [Theory]
    [InlineData("TRACE", "/sign-in")]
    [InlineData("TRACE", "/alive")]
    [InlineData("CONNECT", "/alive")]
    [InlineData("DELETE", "/alive")]
    public async Task Methods_nobody_needs_are_refused(string method, string path)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), path);
        request.Headers.Add("X-Echo", "quillwort");

        using var answer = await (await breaking.SignInAsync()).SendAsync(request, Cancel);

        Assert.InRange((int)answer.StatusCode, 400, 499);
        Assert.DoesNotContain("quillwort", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/due?contact=%7B%7D")]
    [InlineData("/due?contact=1e400&contact=x")]
    [InlineData("/visits/book-visit?salon=%C3%A9%00")]
    public async Task A_query_that_does_not_fit_its_page_leads_nowhere_and_breaks_nothing(string path)
    {
        var desk = await breaking.SignInAsync(StaffRole.FrontDesk);

        Assert.Equal(HttpStatusCode.NotFound, (await desk.GetAsync(path, Cancel)).StatusCode);
    }

    [Theory]
    [InlineData("/js/")]
    [InlineData("/js")]
    [InlineData("/_framework/")]
    [InlineData("/.git/config")]
    [InlineData("/appsettings.json")]
    [InlineData("/HairClinic.Web.dll")]
    [InlineData("/..%2fappsettings.json")]
    [InlineData("/js/..%2f..%2fappsettings.json")]
    public async Task No_folder_is_listed_and_no_file_of_the_program_is_served(string path)
    {
        using var answer = await (await breaking.SignInAsync()).GetAsync(path, Cancel);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    /// <summary>A site as it is served, with an address that breaks. Strangers get no further than the sign-in.</summary>
    public sealed class BreakingSite(PgServer server) : IAsyncLifetime
    {
        private ClinicSite? _site;

        public Task<HttpClient> SignInAsync(StaffRole role = StaffRole.Trainee) =>
            _site!.SignInAsync(ClinicSite.NameOf(_site.Here.Staff[role]));

        public async ValueTask InitializeAsync() =>
            _site = await ClinicSite.OpenAsync(
                server,
                builder => Broken.Break(builder.UseEnvironment("Production"), "Host=/var/run; Password=quillwort")
            );

        public ValueTask DisposeAsync() => _site?.DisposeAsync() ?? ValueTask.CompletedTask;
    }
}
