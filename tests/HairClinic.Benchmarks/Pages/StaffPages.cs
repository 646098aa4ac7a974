using System.Text.RegularExpressions;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using HairClinic.Web.Shell;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Benchmarks.Pages;

/// <param name="Name">The route as the component has it, and what is asked of it.</param>
internal sealed record StaffPage(string Name, string Address);

/// <summary>The pages of the staff, found in the running program so that none is forgotten, each with an id of the practice's book.</summary>
internal static partial class StaffPages
{
    // Imports and exports take as long as they have to do; throwing the demo away asks nothing of its book.
    private static readonly string[] Left = ["/practice/binder/", "/clients/{ClientId:guid}/take-out", "/first-run/"];

    // Pages that show nothing until they are asked something, and those that are asked in several ways.
    private static readonly (string Route, string Query, string As)[] Asked =
    [
        ("/find", "q={code}", "by code"),
        ("/find", "q={name}", "by name"),
        ("/due", "part=atrisk", "at risk"),
        ("/visits/book-visit", "client={client}", "for a client"),
        ("/what-lasts", "of=life&by=base", "life by base"),
        ("/what-lasts", "of=life&by=kind", "life by kind"),
        ("/what-lasts", "of=hold&by=adhesive", "hold by adhesive"),
        ("/what-lasts", "of=hold&by=base", "hold by base"),
        ("/what-lasts", "of=hold&by=lot", "hold by lot"),
        ("/what-lasts", "of=hold&by=salon", "hold by salon"),
        ("/what-lasts", "of=cost&by=kind", "cost by kind"),
        ("/what-lasts", "of=cost&by=base", "cost by base"),
    ];

    /// <param name="first">Pages that are to be among them, whoever may open them.</param>
    public static async Task<IReadOnlyList<StaffPage>> OfAsync(IServiceProvider services, params IReadOnlyList<string> first)
    {
        var routes = services
            .GetRequiredService<EndpointDataSource>()
            .Endpoints.OfType<RouteEndpoint>()
            .Where(e => e.Metadata.GetMetadata<ComponentTypeMetadata>() is not null && IsStaffs(e))
            .Select(e => "/" + e.RoutePattern.RawText!.TrimStart('/'))
            .Where(route =>
                !Left.Any(l => route.StartsWith(l, StringComparison.Ordinal)) && !route.Contains("{*", StringComparison.Ordinal)
            )
            .Distinct()
            .Except(first)
            .Order(StringComparer.Ordinal)
            .ToList();
        var jobs = services.GetRequiredService<PracticeJobRunner>();
        var practice = (await jobs.PracticeIdsAsync(CancellationToken.None))[0];
        var known = await jobs.RunJobAsync(practice, "benchmark", scope => KnownAsync(scope.GetRequiredService<ClinicDbFactory>()));
        return
        [
            .. first.Concat(routes).Select(route => new StaffPage(route, Filled(route, known))),
            .. Asked.Select(a => new StaffPage(
                $"{a.Route} {a.As}",
                $"{a.Route}?{Query().Replace(a.Query, m => known[m.Groups[1].Value])}"
            )),
        ];
    }

    private static bool IsStaffs(RouteEndpoint endpoint) =>
        endpoint.Metadata.GetMetadata<IAllowAnonymous>() is null
        && endpoint.Metadata.GetOrderedMetadata<IAuthorizeData>().Select(a => a.Policy).LastOrDefault(p => p is not null) is { } policy
        && policy != Policies.Client;

    // The parameter, or what the route is about where that is only called an id.
    private static string Filled(string route, IReadOnlyDictionary<string, string> known) =>
        Parameter()
            .Replace(
                route,
                m => known.GetValueOrDefault(m.Groups[1].Value == "Id" ? route.Split('/')[2] : m.Groups[1].Value, Guid.Empty.ToString())
            );

    // A client at risk with an order under way is the most there is to tell of anybody.
    private static async Task<Dictionary<string, string>> KnownAsync(ClinicDbFactory databases)
    {
        await using var db = databases.Open();
        var client = await db
            .Clients.Where(c => db.Bonds.Any(b => b.ClientId == c.Id && b.RemovedOn == null))
            .Where(c => db.ReorderPlans.Any(p => p.ClientId == c.Id && p.InFlight > 0 && p.AtRisk))
            .OrderBy(c => c.Code.Length)
            .ThenBy(c => c.Code)
            .FirstAsync();
        var visit = await db
            .Visits.Where(v => v.State == VisitState.Booked && v.ClientId != client.Id)
            .OrderBy(v => v.StartsAt)
            .ThenBy(v => v.Id)
            .FirstAsync();
        return new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase)
        {
            ["ClientId"] = $"{client.Id}",
            ["client"] = $"{client.Id}",
            ["code"] = Uri.EscapeDataString(client.Code),
            ["name"] = Uri.EscapeDataString(client.Name.Split(' ')[0]),
            ["VisitId"] = $"{visit.Id}",
            ["SalonId"] = $"{client.HomeSalonId}",
            ["PersonId"] = $"{await db.People.OrderBy(p => p.Id).Select(p => p.Id).LastAsync()}",
            ["edit-salon"] = $"{client.HomeSalonId}",
            ["edit-person"] = $"{await db.People.OrderBy(p => p.Id).Select(p => p.Id).FirstAsync()}",
            ["edit-base-material"] = $"{await db.BaseMaterials.Select(b => b.Id).FirstAsync()}",
            ["edit-hold-window"] = $"{await db.HoldWindowRules.Select(r => r.Id).FirstAsync()}",
            ["edit-workshop"] = $"{await db.Workshops.Select(w => w.Id).FirstAsync()}",
            ["edit-service"] = $"{await db.ServiceKinds.Select(s => s.Id).FirstAsync()}",
            ["edit-product"] = $"{await db.Products.Select(p => p.Id).FirstAsync()}",
            ["edit-unit-kind"] = $"{await db.UnitKinds.Select(k => k.Id).FirstAsync()}",
        };
    }

    [GeneratedRegex(@"\{(\w+)(?::\w+)?\}")]
    private static partial Regex Parameter();

    [GeneratedRegex(@"\{(\w+)\}")]
    private static partial Regex Query();
}
