using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>Brings what is known of preparation up to the units as they stand.</summary>
public static class PreparationRefresher
{
    public static async Task RefreshAsync(ClinicDb db, LifeFacts lives, int settingDays, LocalDate today, CancellationToken cancellation)
    {
        var stored = await db.StoredPreparations.SingleOrDefaultAsync(cancellation);
        if (stored is null)
            db.StoredPreparations.Add(stored = new StoredPreparation(Guid.CreateVersion7()));
        Learn(stored, lives, settingDays, today);
    }

    /// <param name="lives">As of that day.</param>
    public static void Learn(StoredPreparation stored, LifeFacts lives, int settingDays, LocalDate today)
    {
        var seen = Observations(lives, today).OrderBy(p => p.ArrivedOn).ToList();
        stored.LearnFrom(
            today,
            settingDays,
            [.. seen.Where(p => p.Bonded).Select(p => (double)p.Days)],
            [.. seen.Where(p => !p.Bonded).Select(p => (double)p.Days)]
        );
    }

    /// <summary>Of every unit that somebody waited for: how long it took from its arrival until it was bonded.</summary>
    private static IEnumerable<(LocalDate ArrivedOn, int Days, bool Bonded)> Observations(LifeFacts lives, LocalDate today)
    {
        foreach (var units in lives.Clients.Select(client => lives.UnitsOf(client).ToList()))
        {
            var hair = units.ConvertAll(u => HairOf(u, lives));
            for (var i = 0; i < units.Count; i++)
            {
                var unit = units[i];
                var bonded = FirstBondedOn(unit, lives);
                // What came without an order is not prepared as one that was made, and what is for nobody any more is not prepared at all.
                if (
                    unit.Dates.OrderedOn is not null
                    && unit.State is not (UnitState.Refused or UnitState.Cancelled)
                    && !(bonded is null && lives.HasClientLeft(unit.Id))
                    && unit.Dates.ArrivedOn is { } came
                    && AwaitedUnitRule.WasAwaited(came, hair.Where((_, other) => other != i))
                    && AwaitedUnitRule.Observe(
                        came,
                        bonded,
                        unit.State.IsGone() ? unit.Dates.RetiredOn : null,
                        units.Where(other => other != unit).SelectMany(other => lives.WornPeriodsOf(other.Id).Select(p => p.From)),
                        today
                    )
                        is var (days, done)
                )
                    yield return (came, days, done);
            }
        }
    }

    private static HairInHouse HairOf(HairSystem unit, LifeFacts lives)
    {
        var ready = UnitAvailability.FromRecords(
            unit.State,
            unit.Dates,
            promisedFor: null,
            lives.FirstWornOn(unit.Id) is { } first ? (first, lives.WornPeriodsOf(unit.Id).Max(p => p.To)) : null,
            wornOut: false,
            daysNeeded: 0
        );
        var gone = unit.State == UnitState.EmergencySpare ? unit.Dates.RetiredOn : ready.GoneOn;
        return new HairInHouse(ready.ReadyOn, gone, lives.FoundWornOutOn(unit.Id));
    }

    private static LocalDate? FirstBondedOn(HairSystem unit, LifeFacts lives) => unit.Dates.FirstBondedOn ?? lives.FirstWornOn(unit.Id);
}
