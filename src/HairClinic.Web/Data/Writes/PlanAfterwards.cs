using HairClinic.Web.Data.Work;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace HairClinic.Web.Data.Writes;

/// <summary>
/// Whatever changes a client's units or what is on their head asks, in the same save, for their next order to be calculated anew.
/// It stands here once, so that no way of changing them can forget it.
/// </summary>
public sealed class PlanAfterwards(IClock clock) : SaveChangesInterceptor
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
        var clients = entries.Select(e => ClientOf(e, owners)).OfType<Guid>().Distinct().ToList();
        var now = clock.GetCurrentInstant();
        if (clients.Count > MostClients)
            db.WorkItems.Add(WorkItems.Recalculate(now));
        else if (clients.Count > 0)
            db.WorkItems.Add(WorkItems.PlanOrders(clients, now));
    }

    private static Guid? ClientOf(EntityEntry entry, Dictionary<Guid, Guid?> owners) =>
        entry.State is EntityState.Unchanged or EntityState.Detached
            ? null
            : entry.Entity switch
            {
                Bond bond when entry.State != EntityState.Modified || entry.Property(nameof(Bond.RemovedOn)).IsModified => bond.ClientId,
                HairSystem unit => unit.ClientId,
                UnitRepair repair => owners.GetValueOrDefault(repair.HairSystemId),
                PromiseRevision promise => owners.GetValueOrDefault(promise.HairSystemId),
                CareFact fact => fact.ClientId,
                Client client when Moves(entry) => client.Id,
                _ => null,
            };

    // Another salon has other open days; who left or was folded into another is planned for no more.
    private static bool Moves(EntityEntry entry) =>
        entry.State == EntityState.Modified
        && new[] { nameof(Client.HomeSalonId), nameof(Client.LeftOn), nameof(Client.MergedIntoId) }.Any(name =>
            entry.Property(name).IsModified
        );
}
