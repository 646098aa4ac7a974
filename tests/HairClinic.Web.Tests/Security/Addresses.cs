using System.Reflection;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.StaticAssets;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Web.Tests.Security;

/// <summary>All addresses that can be looked at, found in the running program.</summary>
public static class Addresses
{
    public static IReadOnlyList<Address> Of(ClinicSite site) =>
        [
            .. site
                .Services.GetRequiredService<EndpointDataSource>()
                .Endpoints.OfType<RouteEndpoint>()
                .Where(e => e.Metadata.GetMetadata<StaticAssetDescriptor>() is null)
                .Where(e => e.Metadata.GetMetadata<IHttpMethodMetadata>()?.HttpMethods.Contains("GET") != false)
                .Select(Read)
                .Where(a => !a.Template.StartsWith("/_", StringComparison.Ordinal) && !a.Template.Contains("{**", StringComparison.Ordinal))
                .OrderBy(a => a.Template, StringComparer.Ordinal),
        ];

    private static Address Read(RouteEndpoint endpoint)
    {
        var page = endpoint.Metadata.GetMetadata<ComponentTypeMetadata>()?.Type;
        var queries = page is null
            ? []
            : page.GetProperties(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic)
                .Select(p => (p, q: p.GetCustomAttribute<SupplyParameterFromQueryAttribute>()))
                .Where(x => x.q is not null)
                .Select(x => x.q!.Name ?? x.p.Name);
        return new(
            "/" + endpoint.RoutePattern.RawText?.TrimStart('/'),
            endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null
                ? null
                : endpoint.Metadata.GetOrderedMetadata<IAuthorizeData>().Select(a => a.Policy).LastOrDefault(p => p is not null),
            [.. endpoint.RoutePattern.Parameters.Select(p => p.Name)],
            [.. queries]
        );
    }
}

/// <param name="Policy">Null where everybody may look.</param>
public sealed record Address(string Template, string? Policy, IReadOnlyList<string> Parameters, IReadOnlyList<string> Queries)
{
    /// <summary>This address with every kind of id it can be given.</summary>
    public IEnumerable<Aim> Aims(ClinicSite site)
    {
        if (Parameters.All(p => RouteRules.Of(Template, p) == Whose.Nobodys))
            yield return new Aim("alone", FillRest(Template), null, null, null, null);
        foreach (var parameter in Parameters.Concat(Queries))
        {
            if (RouteRules.Of(Template, parameter) is not { } whose || whose == Whose.Nobodys)
                continue;
            foreach (var (name, place, guest) in Targets(site))
            {
                var value = Value(whose, place, guest);
                var template = WithPhoto(whose, site, guest);
                yield return new Aim(
                    $"with {name}'s {parameter}",
                    Parameters.Contains(parameter)
                        ? Fill(template, parameter, value)
                        : $"{Template}?{parameter}={Uri.EscapeDataString(value)}",
                    whose == Whose.Name ? value : null,
                    Parameters.Contains(parameter) || Template.StartsWith("/my-hair/", StringComparison.Ordinal) && whose == Whose.Visit
                        ? whose
                        : null,
                    place,
                    guest
                );
            }
        }
    }

    private static IEnumerable<(string Name, ClinicSite.Place Place, ClinicSite.Guest Guest)> Targets(ClinicSite site) =>
        [
            ("the first salon", site.Here, site.Here.Own),
            ("the first salon's other client", site.Here, site.Here.Mate),
            ("the other salon", site.Elsewhere, site.Elsewhere.Own),
            ("the other practice", site.Foreign, site.Foreign.Own),
        ];

    /// <summary>A photo's address names whose it is as well: once rightly, once as if it were a client's of the first salon.</summary>
    private string WithPhoto(Whose whose, ClinicSite site, ClinicSite.Guest guest) =>
        whose == Whose.Photo ? Template.Replace("{clientId:guid}", $"{site.Here.Own.Client.Id}", StringComparison.Ordinal)
        : whose == Whose.Client ? Template.Replace("{photoId:guid}", $"{guest.Photo}", StringComparison.Ordinal)
        : Template;

    private string Fill(string template, string parameter, string value) =>
        FillRest(System.Text.RegularExpressions.Regex.Replace(template, $@"\{{{parameter}(:\w+)?\}}", value))
        + Asks.FirstOrDefault(a => Template.EndsWith(a.Key, StringComparison.Ordinal)).Value;

    /// <summary>What an address must be asked with to be there at all.</summary>
    private static readonly Dictionary<string, string> Asks = new()
    {
        ["{kind}"] = "?for=people",
        ["/take-step"] = "?step=moved",
        ["/take-order-step"] = "?step=promised",
    };

    // With what is nobody's: there is nothing under it.
    private static string FillRest(string path) =>
        System.Text.RegularExpressions.Regex.Replace(path, @"\{\w+(:\w+)?\}", _ => $"{Guid.NewGuid()}");

    private static string Value(Whose whose, ClinicSite.Place place, ClinicSite.Guest guest) =>
        whose switch
        {
            Whose.Client => $"{guest.Client.Id}",
            Whose.Visit => $"{guest.Visit.Id}",
            Whose.Salon => $"{place.Salon.Id}",
            Whose.Person => $"{place.Staff[HairClinic.Domain.Practices.StaffRole.Stylist].Id}",
            Whose.Base => $"{place.Base}",
            Whose.HoldWindow => $"{place.HoldWindow}",
            Whose.Workshop => $"{place.Workshop}",
            Whose.Service => $"{place.Service}",
            Whose.Product => $"{place.Product}",
            Whose.Kind => $"{place.Kind}",
            Whose.Photo => $"{guest.Photo}",
            Whose.Unit => $"{guest.Unit}",
            Whose.Order => $"{place.Order}",
            Whose.Name => guest.Client.Name,
            _ => "clients",
        };
}

/// <summary>One address, filled in.</summary>
/// <param name="Typed">What the asker typed themselves and may see again.</param>
/// <param name="Whose">What the id in the path points at; null where there is none.</param>
public sealed record Aim(string Name, string Path, string? Typed, Whose? Whose, ClinicSite.Place? Place, ClinicSite.Guest? Guest)
{
    /// <returns>Null where both answers are right.</returns>
    public bool? MayBeFound(ClinicSite site, Somebody who) =>
        Whose switch
        {
            Security.Whose.Client or Security.Whose.Visit or Security.Whose.Unit => who.MaySee(site, Place!, Guest!),
            // Theirs, and asked for under the client whose it is.
            Security.Whose.Photo => who.MaySee(site, Place!, Guest!)
                && (Path.StartsWith("/my-hair/", StringComparison.Ordinal) || ReferenceEquals(Guest, site.Here.Own)),
            { } row when RouteRules.OfThePractice.Contains(row) =>
            // Managers: today's pages keep another salon's settings from them, the rule would not; both answers pass.
            row is Security.Whose.Salon
            && who.Role is HairClinic.Domain.Practices.StaffRole.Manager
            && who.At != Place
            && who.IsOfTheirPractice(site, Place!)
                ? null
                : who.IsOfTheirPractice(site, Place!),
            _ => null,
        };

    public string NameOf(ClinicSite site, ClinicSite.Place place, ClinicSite.Guest guest) =>
        guest == Guest ? "them"
        : place == site.Foreign ? "clients of the other practice"
        : place == site.Elsewhere ? "clients of the other salon"
        : ReferenceEquals(guest, site.Here.Mate) ? "another client of the salon"
        : "a client of the salon";
}
