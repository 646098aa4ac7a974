using System.Net;

namespace HairClinic.Web.Tests.Security;

public sealed class ForwardedAddressTests(PgServer server)
{
    private const string Code = "/first-run/create-practice";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Nobody_is_believed_who_is_not_named()
    {
        await using var site = await ListeningSite.OpenAsync(server);

        using var answer = await AskAsync(site.Client(), Code, "203.0.113.7", "https");

        Assert.DoesNotContain("; secure", string.Join(' ', answer.Headers.GetValues("Set-Cookie")), StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("127.0.0.1")]
    [InlineData("10.0.8.0/24, 127.0.0.0/8")]
    public async Task A_named_proxy_says_how_and_from_where_one_came(string proxies)
    {
        await using var site = await ListeningSite.OpenAsync(server, ("Proxy:Addresses", proxies));

        using var answer = await AskAsync(site.Client(), Code, "203.0.113.7", "https");

        Assert.Contains("; secure", string.Join(' ', answer.Headers.GetValues("Set-Cookie")), StringComparison.OrdinalIgnoreCase);
        Assert.True(answer.Headers.Contains("Strict-Transport-Security"));
    }

    [Fact]
    public async Task Of_several_addresses_the_one_the_proxy_saw_counts()
    {
        await using var site = await ListeningSite.OpenAsync(server, ("Proxy:Addresses", "127.0.0.1"));
        var client = site.Client();

        // 1,500 at once are an address's burst. A sender who makes up another address each time is still one sender.
        var flood = await Task.WhenAll(
            Enumerable.Range(0, 2200).Select(i => AskAsync(client, "/alive", $"198.51.100.{i % 250}, 203.0.113.7", "https"))
        );
        using var neighbour = await AskAsync(client, "/alive", "203.0.113.8", "https");

        Assert.Contains(flood, a => a.StatusCode == HttpStatusCode.TooManyRequests);
        Assert.Equal(HttpStatusCode.OK, neighbour.StatusCode);
    }

    [Fact]
    public void A_mistyped_proxy_stops_the_start()
    {
        var e = Assert.Throws<InvalidOperationException>(() => Clinic.Build(["--Proxy:Addresses=the proxy"]));

        Assert.Contains("Proxy:Addresses", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_host_that_is_not_named_is_refused()
    {
        await using var site = await ListeningSite.OpenAsync(server, ("AllowedHosts", "book.example"));
        using var request = new HttpRequestMessage(HttpMethod.Get, "/sign-in");
        request.Headers.Host = "book.example";

        Assert.Equal(HttpStatusCode.BadRequest, (await site.Client().GetAsync("/sign-in", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await site.Client().SendAsync(request, Cancel)).StatusCode);
    }

    private static Task<HttpResponseMessage> AskAsync(HttpClient client, string path, string from, string scheme)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, path);
        request.Headers.Add("X-Forwarded-For", from);
        request.Headers.Add("X-Forwarded-Proto", scheme);
        request.Headers.Host = "book.example";
        return client.SendAsync(request, Cancel);
    }
}
