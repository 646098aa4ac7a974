using HairClinic.Web.Data.Work;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.Configuration;

namespace HairClinic.Web.Tests.Data.Work;

public sealed class SiteAddressTests
{
    [Theory]
    [InlineData("https://book.example", "https://book.example")]
    [InlineData(" https://book.example/ ", "https://book.example")]
    [InlineData("http://192.0.2.7:8080", "http://192.0.2.7:8080")]
    public void What_is_set_is_the_address_wherever_the_program_listens(string set, string url)
    {
        var site = Site(set, "10.0.0.1", "http://0.0.0.0:8080");

        Assert.Equal(url, site.Url);
        Assert.Equal(url, site.ConfiguredOrPageBaseUrl("https://forged.example/practice"));
    }

    [Theory]
    [InlineData("book.example")]
    [InlineData("ftp://book.example")]
    [InlineData("/book")]
    [InlineData("https://book.example/salon")]
    [InlineData("https://book.example?a=b")]
    [InlineData("https://somebody@book.example")]
    [InlineData("file:///etc/passwd")]
    public void What_is_no_address_of_a_site_stops_the_start_and_says_how_to_write_it(string set)
    {
        var refused = Assert.Throws<InvalidOperationException>(() => Site(set, proxies: null));

        Assert.Contains("https://book.example", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("http://127.0.0.1:5184", "http://127.0.0.1:5184")]
    [InlineData("http://localhost:5090", "http://localhost:5090")]
    [InlineData("http://[::1]:5090", "http://[::1]:5090")]
    public void On_this_machine_alone_it_is_the_port_listened_on(string listening, string url) =>
        Assert.Equal(url, Site(set: null, proxies: null, listening).Url);

    [Theory]
    [InlineData(null, "http://0.0.0.0:8080")]
    [InlineData(null, "http://[::]:8080")]
    [InlineData(null, "http://*:8080")]
    [InlineData(null, "http://192.0.2.7:8080")]
    [InlineData(null, "http://unix:/run/site.sock")]
    [InlineData("127.0.0.1", "http://127.0.0.1:5080")]
    public void Beyond_this_machine_and_behind_a_proxy_it_is_not_guessed(string? proxies, string listening) =>
        Assert.Null(Site(set: null, proxies, listening).Url);

    private static SiteAddress Site(string? set, string? proxies, params string[] listening) =>
        new(
            new ConfigurationBuilder()
                .AddInMemoryCollection(new Dictionary<string, string?> { [SiteAddress.Setting] = set, ["Proxy:Addresses"] = proxies })
                .Build(),
            new Listening(listening)
        );

    /// <summary>Where a server says it listens; nothing is asked of it.</summary>
    private sealed class Listening : IServer, IServerAddressesFeature
    {
        public Listening(string[] addresses)
        {
            Addresses = addresses;
            Features.Set<IServerAddressesFeature>(this);
        }

        public IFeatureCollection Features { get; } = new FeatureCollection();

        public ICollection<string> Addresses { get; }

        public bool PreferHostingUrls { get; set; }

        public Task StartAsync<TContext>(IHttpApplication<TContext> application, CancellationToken cancellationToken)
            where TContext : notnull => throw new NotSupportedException();

        public Task StopAsync(CancellationToken cancellationToken) => throw new NotSupportedException();

        public void Dispose() { }
    }
}
