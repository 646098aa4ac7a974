using HairClinic.Web.Data.Work;

namespace HairClinic.Web.Data.Books;

/// <summary>Brings what a workshop said of an order to its units: at once to those the actor sees, by a job to those they do not.</summary>
public static class OrderLines
{
    /// <param name="by">Who wrote it.</param>
    /// <returns>The lines the actor sees, with their promises.</returns>
    public static async Task<List<HairSystem>> SpreadAsync(
        ClinicDb db,
        WorkshopOrder order,
        LocalDate today,
        Instant now,
        Guid? by,
        CancellationToken cancellation
    )
    {
        var lines = await db.HairSystems.Include(u => u.Promises).Where(u => u.OrderId == order.Id).ToListAsync(cancellation);
        foreach (var line in lines)
            order.Spread(line, Guid.CreateVersion7, new UnitStepEntry(Guid.Empty, today, now, by));
        return lines;
    }

    /// <summary>In the same save: lines of clients the actor does not see follow by themselves.</summary>
    public static void SpreadToOthers(ClinicDb db, WorkshopOrder order, int seen, Instant now, Guid? by)
    {
        if (seen < order.UnitCount)
            db.WorkItems.Add(WorkItemFactory.SpreadOrder(order.Id, by, now));
    }

    /// <summary>As a job, which sees all lines.</summary>
    public static async Task FollowAsync(ClinicDb db, SpreadOrderBody body, Instant now, CancellationToken cancellation)
    {
        var order = await db.WorkshopOrders.AsNoTracking().Include(o => o.Promises).SingleAsync(o => o.Id == body.OrderId, cancellation);
        var salon = await db.Salons.AsNoTracking().SingleAsync(s => s.Id == order.SalonId, cancellation);
        await SpreadAsync(db, order, salon.DayOf(now), now, body.By, cancellation);
        await db.SaveChangesAsync(cancellation);
    }
}
