using HairClinic.Domain.Clients;
using HairClinic.Domain.Wear.Lifetimes;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Data.Learning;

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
            .OrderBy(f => f.AsOf)
            .ToListAsync(cancellation);
        return new HabitBook(rows.ToLookup(f => f.ClientId));
    }

    public IEnumerable<WearColumn> ForHold(Guid clientId, LocalDate on)
    {
        if (Known(clientId, on) is not { } fact)
            yield break;
        if (fact.Skin == SkinOiliness.Oily)
            yield return WearColumn.Of(WearHabit.OilySkin);
        if (fact.Sweat == Sweating.Heavy)
            yield return WearColumn.Of(WearHabit.HeavySweat);
        if (fact.SwimsPerWeek is > 0)
            yield return WearColumn.Of(WearHabit.DailySwim, OfDaily(fact.SwimsPerWeek.Value));
        if (fact.WashesPerWeek is > 0)
            yield return WearColumn.Of(WearHabit.DailyWash, OfDaily(fact.WashesPerWeek.Value));
    }

    public IEnumerable<WearColumn> ForLife(Guid clientId, LocalDate on)
    {
        if (Known(clientId, on) is not { } fact)
            yield break;
        if (fact.WashesPerWeek is > 0)
            yield return WearColumn.Of(WearHabit.DailyWash, OfDaily(fact.WashesPerWeek.Value));
        if (fact.HeatPerWeek is > 0)
            yield return WearColumn.Of(WearHabit.DailyHeat, OfDaily(fact.HeatPerWeek.Value));
        if (fact.SwimsPerWeek is > 0)
            yield return WearColumn.Of(WearHabit.DailySwim, OfDaily(fact.SwimsPerWeek.Value));
    }

    private CareFact? Known(Guid clientId, LocalDate on) => facts[clientId].LastOrDefault(f => f.AsOf <= on);

    private static double OfDaily(decimal timesPerWeek) => (double)timesPerWeek / 7;
}
