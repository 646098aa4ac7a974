using System.Net;

namespace HairClinic.Web.Tests.Security;

/// <summary>Everybody tries every address there is, with ids of their own, of a neighbour, of another salon and of another practice.</summary>
public sealed class RouteMatrixTests(PgServer server)
{
    /// <summary>
    /// What opens today although it should not. Each line leaves with the work that closes it: the test fails until it is struck out.
    /// </summary>
    private static readonly string[] StillOpen = [];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Each_address_opens_to_whom_it_should_with_what_is_theirs_and_to_nobody_else()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        var everybody = await Somebody.AllAsync(site);
        var wrong = new List<string>();
        foreach (var route in Addresses.Of(site))
        {
            foreach (var who in everybody)
            {
                foreach (var aim in route.Aims(site))
                    wrong.AddRange(await TryAsync(site, route, who, aim));
            }
        }

        Assert.Equal(StillOpen.Order(StringComparer.Ordinal), wrong.Distinct().Order(StringComparer.Ordinal));
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
        if (RouteRules.NotFoundByAll.Contains(route.Template) && !isNotFound)
            wrong.Add("is found");
        if (!who.MayOpen(route.Policy) && !isRefused)
            wrong.Add($"opens ({(int)answer.StatusCode})");
        if (who.MayOpen(route.Policy) && isRefused)
            wrong.Add($"is refused ({to})");
        if (who.MayOpen(route.Policy) && aim.MayBeFound(site, who) is { } found && found == isNotFound && !RouteRules.NotFoundByAll.Contains(route.Template))
            wrong.Add(found ? "is not found" : "is found");
        foreach (var place in new[] { site.Here, site.Elsewhere, site.Foreign })
        {
            foreach (var guest in new[] { place.Own, place.Mate })
            {
                if (!who.MaySee(site, place, guest) && ClinicSite.Place.Words(guest).Any(w => w != aim.Typed && page.Contains(w, StringComparison.OrdinalIgnoreCase)))
                    wrong.Add($"names {aim.NameOf(site, place, guest)}");
            }
        }
        return wrong.Select(w => $"{route.Template} {aim.Name} as {who.Name}: {w}");
    }
}
