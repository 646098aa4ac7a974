using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Outlook;

/// <summary>The orders to expect at one workshop, month by month.</summary>
/// <param name="Name">Null where the workshop is not known.</param>
/// <param name="IsSum">All workshops together.</param>
public sealed record WorkshopOrderLoad(string? Name, LocalDate From, OrderLoad Load, bool IsSum = false)
{
    /// <returns>By workshop; the last is all of them together where there are several. Empty before the first recalculation.</returns>
    internal static async Task<IReadOnlyList<WorkshopOrderLoad>> ReadAsync(ClinicDb db, CancellationToken cancellation)
    {
        var names = await db.Workshops.AsNoTracking().ToDictionaryAsync(w => w.Id, w => w.Name, cancellation);
        var forecasts = await db.OrderForecasts.AsNoTracking().ToListAsync(cancellation);
        var months = forecasts
            .Select(f => new WorkshopOrderLoad(f.WorkshopId is { } id ? names[id] : null, f.From, f.ToOrderLoad()))
            .OrderBy(m => m.Name is null)
            .ThenBy(m => m.Name, StringComparer.CurrentCultureIgnoreCase)
            .ToList();
        if (months.Count < 2)
            return months;
        var sum = new OrderLoad(months.Max(m => m.Load.Months));
        foreach (var workshop in months)
            sum.Add(workshop.Load);
        return [.. months, new WorkshopOrderLoad(null, months.Min(m => m.From), sum, IsSum: true)];
    }
}
