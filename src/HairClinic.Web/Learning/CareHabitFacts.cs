using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>What is known of clients' skin and habits, as of a day. One not yet recorded is simply absent.</summary>
public sealed class CareHabitFacts
{
    private readonly ILookup<Guid, CareFact> _facts;

    private CareHabitFacts(ILookup<Guid, CareFact> facts) => _facts = facts;

    /// <param name="clientIds">Null for all.</param>
    public static async Task<CareHabitFacts> LoadAsync(ClinicDb db, IReadOnlyCollection<Guid>? clientIds, CancellationToken cancellation)
    {
        var rows = await db
            .CareFacts.AsNoTracking()
            .Where(f => clientIds == null || clientIds.Contains(f.ClientId))
            .ToListAsync(cancellation);
        return new CareHabitFacts(rows.ToLookup(f => f.ClientId));
    }

    public IEnumerable<CovariateValue> HoldCovariates(Guid clientId, LocalDate on) => Columns(clientId, on, LifetimeKind.Hold);

    public IEnumerable<CovariateValue> LifeCovariates(Guid clientId, LocalDate on) => Columns(clientId, on, LifetimeKind.Life);

    private IEnumerable<CovariateValue> Columns(Guid clientId, LocalDate on, LifetimeKind quantity) =>
        CovariateCatalog.FactAsOf(_facts[clientId], on) is { } fact
            ? CovariateCatalog.ValuesFromHabits(fact.Habits, quantity).Select(h => CovariateValue.For(h.Habit, h.Value))
            : [];
}
