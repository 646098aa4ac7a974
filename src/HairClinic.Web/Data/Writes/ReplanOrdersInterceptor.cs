using HairClinic.Web.Data.Work;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace HairClinic.Web.Data.Writes;

/// <summary>
/// What shapes a client's next order (<see cref="ShapesNextOrderAttribute"/>) asks, in the same save, for it to be planned again:
/// no way of changing it can forget to.
/// </summary>
public sealed class ReplanOrdersInterceptor(IClock clock) : SaveChangesInterceptor
{
    /// <summary>A save that touches more clients, as an import does, asks for the whole practice instead.</summary>
    public const int MostClients = 200;

    public override ValueTask<InterceptionResult<int>> SavingChangesAsync(
        DbContextEventData eventData,
        InterceptionResult<int> result,
        CancellationToken cancellationToken = default
    )
    {
        Ask(eventData.Context);
        return base.SavingChangesAsync(eventData, result, cancellationToken);
    }

    public override InterceptionResult<int> SavingChanges(DbContextEventData eventData, InterceptionResult<int> result)
    {
        Ask(eventData.Context);
        return base.SavingChanges(eventData, result);
    }

    private void Ask(DbContext? context)
    {
        if (context is not ClinicDb { Actor: not null } db)
            return;
        // Read once: every reading of the entries looks all of them through for changes.
        var entries = db.ChangeTracker.Entries().ToList();
        var owners = entries.Select(e => e.Entity).OfType<HairSystem>().ToDictionary(u => u.Id, u => u.ClientId);
        var clients = entries.SelectMany(e => ClientsOf(e, owners)).OfType<Guid>().Distinct().ToList();
        var now = clock.GetCurrentInstant();
        if (clients.Count > MostClients)
            db.WorkItems.Add(WorkItemFactory.Recalculate(now));
        else if (clients.Count > 0)
            db.WorkItems.Add(WorkItemFactory.PlanOrders(clients, now));
    }

    // Of a row that changes hands: who has it now, and who had it.
    private static IEnumerable<Guid?> ClientsOf(EntityEntry entry, Dictionary<Guid, Guid?> owners)
    {
        if (entry.State is EntityState.Unchanged or EntityState.Detached)
            return [];
        var changed = entry.State == EntityState.Modified ? entry.Properties.Where(p => p.IsModified).Select(p => p.Metadata.Name) : null;
        return !ShapesNextOrderAttribute.IsChangedBy(entry.Metadata.ClrType, changed) ? []
            : entry.Entity is Client client ? [client.Id]
            : entry.Metadata.FindProperty(nameof(HairSystem.ClientId)) is { } own
                ? [(Guid?)entry.CurrentValues[own], (Guid?)entry.OriginalValues[own]]
            : [owners.GetValueOrDefault((Guid)entry.CurrentValues[nameof(UnitRepair.HairSystemId)]!)];
    }
}
