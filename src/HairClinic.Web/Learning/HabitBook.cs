using HairClinic.Domain.Clients;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Web.Data;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Learning;

/// <summary>What is known of clients' skin and habits, as of a day. One not yet recorded is simply absent.</summary>
public sealed class HabitBook
{
    private readonly ILookup<Guid, CareFact> facts;

    private HabitBook(ILookup<Guid, CareFact> facts) => this.facts = facts;

    /// <param name="clientIds">Null for all.</param>
    public static async Task<HabitBook> LoadAsync(ClinicDb db, IReadOnlyCollection<Guid>? clientIds, CancellationToken cancellation)
    {
        var rows = await db
            .CareFacts.AsNoTracking()
            .Where(f => clientIds == null || clientIds.Contains(f.ClientId))
            .ToListAsync(cancellation);
        return new HabitBook(rows.ToLookup(f => f.ClientId));
    }

    public IEnumerable<WearColumn> ForHold(Guid clientId, LocalDate on) => Columns(clientId, on, WearHabits.OfHold);

    public IEnumerable<WearColumn> ForLife(Guid clientId, LocalDate on) => Columns(clientId, on, WearHabits.OfLife);

    private IEnumerable<WearColumn> Columns(Guid clientId, LocalDate on, Func<CareFact, IEnumerable<(WearHabit Habit, double Value)>> of) =>
        WearHabits.KnownOn(facts[clientId], on) is { } fact ? of(fact).Select(h => WearColumn.Of(h.Habit, h.Value)) : [];
}
