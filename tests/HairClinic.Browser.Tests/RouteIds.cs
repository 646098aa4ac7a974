using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Browser.Tests;

/// <summary>What the parameters of routes stand for in a book, so that every page can be opened.</summary>
public static class RouteIds
{
    /// <returns>By the parameter's name, or for an id that is only called so by what its address edits.</returns>
    public static async Task<Dictionary<string, Guid>> OfAsync(ClinicDb db, Visit visit, Guid client) =>
        new()
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
            // A line of an order: a step of its own can be taken.
            ["UnitId"] = await db.HairSystems.Where(u => u.OrderId != null).Select(u => u.Id).FirstAsync(),
        };
}
