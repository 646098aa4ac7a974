using HairClinic.Domain.Replay;

namespace HairClinic.Web.Learning;

/// <summary>Predicts every bond and unit of the past again, each from what was known on the day it was made or first worn.</summary>
/// <param name="knownBefore">What had been learnt before a day.</param>
public sealed class PastBands(PastRecords records, Func<LocalDate, PastKnowledge> knownBefore)
{
    /// <summary>Bonds whose row of the practice says how long they should hold, and of which anything was seen.</summary>
    public IEnumerable<(Guid Id, BandOutcome Outcome)> Bonds()
    {
        foreach (var came in records.Spells.Where(s => s.Window is not null && Tells(s.Spell)))
        {
            if (came.ClientId is not { } client || !records.NumbersLookedAt.TryGetValue(client, out var number))
                continue;
            var day = came.AppliedOn;
            var then = records.Holds.AsOf(day, client);
            var made = then.AllSpells(day).Single(s => s.BondId == came.BondId);
            var said = knownBefore(day).Hold.Predict(then.SpellsUntil(client, day), made.Window!.Value, made.Columns);
            yield return (came.BondId, BandOutcome.FromSpell(said, came.Spell, number));
        }
    }

    /// <summary>Units of clients that were ever worn and of which anything was seen, in worn days.</summary>
    public IEnumerable<(Guid Id, BandOutcome Outcome)> Units()
    {
        foreach (var came in records.LifeSpells.Where(s => s.Window is not null && Tells(s.Spell)))
        {
            if (came.ClientId is not { } client || !records.NumbersLookedAt.TryGetValue(client, out var number))
                continue;
            var day = came.FirstWornOn;
            var all = records.Lives.AsOf(day, client).Spells(client, records.Kinds, day).ToList();
            // Given to the client after it was worn by another: it was not theirs yet.
            if (all.Find(s => s.UnitId == came.UnitId) is not { } first)
                continue;
            var own = all.Where(s => s.UnitId != came.UnitId).ToList();
            var said = knownBefore(day).Life.PredictUnit(own, records.Kinds[came.UnitKindId], first.Columns, repairedAt: null);
            yield return (came.UnitId, BandOutcome.FromSpell(said, came.Spell, number));
        }
    }

    // A bond made today has told nothing yet.
    private static bool Tells(Spell spell) => spell is not { Lower: 0, Upper: double.PositiveInfinity };
}
