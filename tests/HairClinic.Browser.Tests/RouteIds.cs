using System.Text.RegularExpressions;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Privacy;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Browser.Tests;

/// <summary>What the parameters of routes stand for in a book, so that every page can be opened.</summary>
public static class RouteIds
{
    /// <summary>What a page must be asked with to be there at all, or to have its form.</summary>
    private static readonly Dictionary<string, string> Asks = new()
    {
        ["/practice/apply-retention"] = $"?what={RetentionSubject.ContactNotes}",
        ["/units/{UnitId:guid}/take-step"] = $"?step={UnitStepKind.Arrived}",
        ["/units/{UnitId:guid}/correct-step-day"] = "?step={StepId}",
        ["/orders/{OrderId:guid}/take-order-step"] = $"?step={UnitStepKind.Arrived}",
    };

    /// <summary>The address of a route with ids in the place of its parameters.</summary>
    /// <exception cref="KeyNotFoundException">A parameter means nothing yet.</exception>
    public static string PathOf(string route, IReadOnlyDictionary<string, Guid> ids) =>
        Regex.Replace(
            route + Asks.GetValueOrDefault(route),
            @"\{(\w+)(:guid)?\}",
            m => ids[m.Groups[1].Value == "Id" ? Regex.Match(route, "edit-([a-z-]+)").Groups[1].Value : m.Groups[1].Value].ToString()
        );

    /// <returns>By the parameter's name, or for an id that is only called so by what its address edits.</returns>
    public static async Task<Dictionary<string, Guid>> OfAsync(ClinicDb db, Visit visit, Guid client)
    {
        // A line of an order: a step of its own can be taken.
        var unit = await db.HairSystems.Where(u => u.OrderId != null).OrderBy(u => u.Id).Select(u => u.Id).FirstAsync();
        return new()
        {
            ["ClientId"] = client,
            ["VisitId"] = visit.Id,
            ["SalonId"] = visit.SalonId,
            ["PersonId"] = visit.PersonId!.Value,
            ["salon"] = visit.SalonId,
            ["person"] = visit.PersonId!.Value,
            ["base-material"] = await db.BaseMaterials.Select(b => b.Id).FirstAsync(),
            ["hold-window"] = await db.HoldWindowRules.Select(b => b.Id).FirstAsync(),
            ["product"] = await db.Products.Select(b => b.Id).FirstAsync(),
            ["service"] = await db.ServiceKinds.Select(b => b.Id).FirstAsync(),
            ["unit-kind"] = await db.UnitKinds.Select(b => b.Id).FirstAsync(),
            ["workshop"] = await db.Workshops.Select(b => b.Id).FirstAsync(),
            ["OrderId"] = await db.WorkshopOrders.Select(o => o.Id).FirstAsync(),
            ["UnitId"] = unit,
            ["StepId"] = await db.UnitSteps.Where(s => s.HairSystemId == unit).Select(s => s.Id).FirstAsync(),
        };
    }
}
