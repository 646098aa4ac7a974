using HairClinic.Web.Shell.Limits;
using HairClinic.Web.Tests.Layout;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.StaticAssets;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Web.Tests.Security;

/// <summary>Every address the program answers to, whoever added it: who may use it, and what keeps others from having it used.</summary>
[Collection(LookedAtSite.Name)]
public sealed class EndpointRulesTests(LookedAtSite looked)
{
    /// <summary>Open to anybody, each for a reason.</summary>
    private static readonly Dictionary<string, string> OpenToAll = new()
    {
        ["/"] = "leads everybody to their room, or to sign in",
        ["/alive"] = "a probe that says one word",
        ["/ready"] = "a probe that says one word",
        ["/sign-in"] = "how one gets in",
        ["/sign-in-code"] = "opens between the password and the code",
        ["/switch-person"] = "how people take turns at a shared tablet; elsewhere it leads to signing in",
        ["/passkey/request"] = "how a passkey gets in: a question with nobody's name in it",
        ["/sign-out"] = "ends only the asker's own sign-in",
        ["/set-password"] = "opens with a link's token",
        ["/first-run/create-practice"] = "opens with the console's code while nobody practises here",
        ["/my-hair/ask-link"] = "how a client gets in",
        ["/my-hair/open-link"] = "opens with a link's token",
        ["/my-hair/my-new-address"] = "opens with a letter's token",
        ["/my-hair/calendar/{address}"] = "a calendar follows it by the secret in its address",
        ["/my-hair/demo-letters"] = "not found unless the only practice is the demo",
        ["/refused"] = "says only that something is not open; clients and strangers are led here too",
        ["/not-found"] = "says only that there is nothing",
        ["/error"] = "says only that something went wrong",
    };

    /// <summary>Endpoints, other than pages, that answer to GET: each only reads, or why not.</summary>
    private static readonly Dictionary<string, string> Reads = new()
    {
        ["/"] = "redirects",
        ["/alive"] = "says one word",
        ["/ready"] = "says one word",
        ["/refresh-sign-in"] = "renews the asker's own sign-in and nothing else",
        ["/practice/binder/export/{kind}"] = "a download",
        ["/what-lasts/table.csv"] = "a download of counts and times, of nobody by name",
        ["/ahead/workload.csv"] = "a download",
        ["/ahead/orders.csv"] = "a download",
        ["/orders/orders.csv"] = "a download of codes, of nobody by name",
        ["/ahead/past-gaps.csv"] = "a download; that it was taken is noted",
        ["/practice/access-log/lines.csv"] = "a download; that it was taken is noted",
        ["/clients/{clientId:guid}/take-out/file"] = "a download; that it was taken is noted",
        ["/clients/{clientId:guid}/photos/{photoId:guid}"] = "a picture; that it was looked at is noted",
        ["/clients/{clientId:guid}/photos/{photoId:guid}/small"] = "a picture",
        ["/my-hair/my-photos/{photoId:guid}"] = "a picture; that it was looked at is noted",
        ["/my-hair/my-photos/{photoId:guid}/small"] = "a picture",
        ["/my-hair/take-my-data/file"] = "a download; that it was taken is noted",
        ["/my-hair/refresh-sign-in"] = "redirects",
        ["/my-hair/dates.ics"] = "a download",
        ["/my-hair/calendar/{address}"] = "a download",
    };

    private IEnumerable<RouteEndpoint> Endpoints =>
        looked
            .Site.Services.GetRequiredService<EndpointDataSource>()
            .Endpoints.OfType<RouteEndpoint>()
            .Where(e => e.Metadata.GetMetadata<StaticAssetDescriptor>() is null && !Framework(e));

    [Fact]
    public void Each_address_says_who_may_use_it()
    {
        var offenders =
            from endpoint in Endpoints
            let open = endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null
            let named = endpoint.Metadata.GetOrderedMetadata<IAuthorizeData>().Any(a => a.Policy is not null)
            where open ? !OpenToAll.ContainsKey(Route(endpoint)) : !named
            select Route(endpoint);

        Assert.Empty(offenders);
    }

    /// <summary>Kept beside the program: a page that changes whom it opens to changes in route-policies.csv first.</summary>
    [Fact]
    public void Each_address_opens_by_the_policy_it_should()
    {
        var should = File.ReadAllLines(Path.Combine(SourceTree.WebTests, "Security", "route-policies.csv")).Skip(1);
        var does =
            from endpoint in Endpoints
            from data in endpoint.Metadata.GetOrderedMetadata<IAuthorizeData>()
            where data.Policy is not null && endpoint.Metadata.GetMetadata<IAllowAnonymous>() is null
            select $"{Route(endpoint)},{data.Policy}";

        Assert.Equal(should.Order(StringComparer.Ordinal), does.Distinct().Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_list_of_what_is_open_to_all_holds_nothing_else()
    {
        var open = Endpoints.Where(e => e.Metadata.GetMetadata<IAllowAnonymous>() is not null).Select(Route).ToHashSet();

        Assert.Empty(OpenToAll.Keys.Except(open));
    }

    [Fact]
    public void Whatever_changes_something_asks_for_our_own_mark()
    {
        var offenders = Endpoints
            .Where(Changes)
            .Where(e => e.Metadata.GetMetadata<IAntiforgeryMetadata>() is not { RequiresValidation: true });

        Assert.Empty(offenders.Select(Route));
    }

    [Fact]
    public void Whatever_is_only_looked_at_changes_nothing()
    {
        var offenders = Endpoints
            .Where(e => e.Metadata.GetMetadata<ComponentTypeMetadata>() is null && Methods(e).Contains("GET"))
            .Select(Route)
            .Except(Reads.Keys);

        Assert.Empty(offenders);
    }

    [Fact]
    public void Whatever_strangers_may_send_is_counted()
    {
        string[] free = ["/sign-out", "/my-hair/demo-letters", "/refused", "/not-found", "/error"];
        var offenders =
            from endpoint in Endpoints
            where endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null && Changes(endpoint)
            where endpoint.Metadata.GetMetadata<RateLimitedAttribute>() is null
            select Route(endpoint);

        Assert.Empty(offenders.Except(free));
    }

    // Blazor's own: the circuit (a page's sign-in is checked when it opens), its scripts, and answers to unknown addresses.
    private static bool Framework(RouteEndpoint endpoint) =>
        Route(endpoint).StartsWith("/_blazor", StringComparison.Ordinal)
        || Route(endpoint).StartsWith("/_framework", StringComparison.Ordinal)
        || endpoint.RoutePattern.RawText is { } raw && raw.Contains("{**", StringComparison.Ordinal);

    private static bool Changes(RouteEndpoint endpoint) => Methods(endpoint).Any(m => m is not ("GET" or "HEAD" or "OPTIONS"));

    private static IReadOnlyList<string> Methods(RouteEndpoint endpoint) =>
        endpoint.Metadata.GetMetadata<IHttpMethodMetadata>()?.HttpMethods ?? ["any"];

    private static string Route(RouteEndpoint endpoint) => "/" + endpoint.RoutePattern.RawText?.TrimStart('/');
}
