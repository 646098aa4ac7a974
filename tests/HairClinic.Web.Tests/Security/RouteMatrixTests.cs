using System.Collections.Concurrent;
using System.Net;
using HairClinic.Web.Language;
using HairClinic.Web.Tests.Layout;

namespace HairClinic.Web.Tests.Security;

/// <summary>Everybody tries every address there is, with ids of their own, of a neighbour, of another salon and of another practice.</summary>
public sealed class RouteMatrixTests(PgServer server)
{
    /// <summary>
    /// What opens today although it should not, a line each. The work that closes one strikes it out: until then the test fails.
    /// </summary>
    private static IEnumerable<string> StillOpen =>
        File.ReadLines(Path.Combine(SourceTree.WebTests, "Security", "still-open.txt")).Where(l => l.Length > 0 && l[0] == '/');

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Each_address_opens_to_whom_it_should_with_what_is_theirs_and_to_nobody_else()
    {
        var faults = new CapturedLog();
        await using var site = await ClinicSite.OpenAsync(server, faults.CatchFaults);
        var everybody = await Somebody.AllAsync(site);
        var wrong = new ConcurrentBag<string>();
        await Parallel.ForEachAsync(
            everybody,
            new ParallelOptions { MaxDegreeOfParallelism = 4, CancellationToken = Cancel },
            async (who, _) =>
            {
                foreach (var route in Addresses.Of(site))
                {
                    // Whoever may not open it at all is refused whatever the id.
                    foreach (var aim in who.MayOpen(route.Policy) ? route.Aims(site) : route.Aims(site).Take(1))
                    {
                        foreach (var line in await TryAsync(site, route, who, aim))
                            wrong.Add(line);
                    }
                }
            }
        );

        var news = wrong.Except(StillOpen).Distinct().Order(StringComparer.Ordinal).ToList();
        var closed = StillOpen.Except(wrong).Order(StringComparer.Ordinal).ToList();
        Assert.True(news.Count == 0, "Wrong:\n" + string.Join('\n', news.Concat(faults.Lines)));
        Assert.True(closed.Count == 0, "No longer wrong, strike out in still-open.txt:\n" + string.Join('\n', closed));
    }

    [Fact]
    public async Task Each_parameter_of_an_address_has_a_rule()
    {
        await using var site = await ClinicSite.OpenAsync(server);

        var offenders =
            from route in Addresses.Of(site)
            from parameter in route.Parameters.Concat(route.Queries)
            where RouteRules.Of(route.Template, parameter) is null
            select $"{route.Template}: {parameter}";

        Assert.Empty(offenders);
    }

    private static async Task<IEnumerable<string>> TryAsync(ClinicSite site, Address route, Somebody who, Aim aim)
    {
        using var answer = await who.Browser.GetAsync(aim.Path, Cancel);
        var page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel));
        var to = answer.Headers.Location is { } location ? new Uri(new Uri("https://localhost"), location).AbsolutePath : "";
        var isRefused = to is "/sign-in" or "/refused" or "/my-hair/ask-link" || answer.StatusCode is HttpStatusCode.Forbidden;
        var isNotFound = answer.StatusCode == HttpStatusCode.NotFound || page.Contains("There is nothing here", StringComparison.Ordinal);
        var wrong = new List<string>();

        if ((int)answer.StatusCode >= 500)
            wrong.Add($"breaks with {(int)answer.StatusCode}");
        if (RouteRules.ForEverybody.Contains(route.Template))
            isRefused = false;
        if (RouteRules.NotFoundByAll.Contains(route.Template) && who.MayOpen(route.Policy) && !isNotFound)
            wrong.Add("is found");
        if (!who.MayOpen(route.Policy) && !isRefused)
            wrong.Add($"opens ({(int)answer.StatusCode})");
        if (who.MayOpen(route.Policy) && isRefused)
            wrong.Add($"is refused ({to})");
        if (
            who.MayOpen(route.Policy)
            && aim.MayBeFound(site, who) is { } found
            && found == isNotFound
            && !RouteRules.NotFoundByAll.Contains(route.Template)
        )
            wrong.Add(found ? "is not found" : "is found");
        foreach (var place in new[] { site.Here, site.Elsewhere, site.Foreign })
        {
            foreach (var guest in new[] { place.Own, place.Mate })
            {
                if (
                    !who.MaySee(site, place, guest)
                    && ClinicSite.Place.Words(guest).Any(w => w != aim.Typed && page.Contains(w, StringComparison.OrdinalIgnoreCase))
                )
                    wrong.Add($"names {aim.NameOf(site, place, guest)}");
            }
        }
        return wrong.Select(w => $"{route.Template} {aim.Name} as {who.Name}: {w}");
    }
}
