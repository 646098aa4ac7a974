using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>
/// Holds and lives that lie beyond 99.9 % of what the fit of the others believes: their dates are asked about, and nothing is learnt
/// from them until somebody answers.
/// </summary>
/// <remarks>
/// What ended is beyond at either end with half of what is left; what goes on only by having lasted too long, with all of it.
/// Each is judged as one of a client of whom nothing else is known. What judges must not be moved by what it looks for, so it is a fit
/// in which whatever lies beyond counts as "at least until there", or "by then", where that begins: honest rows bear it without moving
/// the fit, and rows that were simply left out would make all that is left look more alike, and so more of it strange. It starts from
/// what the last such fit believed, or from the practice's windows.
/// </remarks>
public static class OutlyingSpells
{
    /// <summary>The chance that is left beyond.</summary>
    public const double Beyond = 0.001;

    // One fit judges, or two where nothing is known yet; an answer that goes to and fro is taken as it then stands.
    private const int MostFits = 4;

    /// <param name="start">What the last fit that was made this way believed, or what the practice's rows assume.</param>
    /// <param name="fit">Fits the rows, of which those that are null are left out; believes nothing where there is no estimate.</param>
    /// <returns>The fit to the rows that are not asked about, and the places of those that are.</returns>
    public static OutlyingSpellsFound<TFit> Find<TFit>(
        IReadOnlyList<SpellToJudge> rows,
        SpellBelief start,
        Func<IReadOnlyList<Spell?>, (TFit Fit, SpellBelief? Believed)> fit
    )
    {
        var (believed, beyond) = (start, BeyondUnder(start, rows));
        for (var fits = 1; ; fits++)
        {
            var (fitted, now) = fit(CutOff(believed, beyond, rows));
            if (now is null)
                return new(beyond.Length == 0 ? fitted : fit(Without([], rows)).Fit, []);
            var asked = BeyondUnder(now, rows);
            if (asked.Length == 0 && beyond.Length == 0)
                return new(fitted, asked);
            if (fits == MostFits || asked.SequenceEqual(beyond))
                return new(fit(Without(asked, rows)).Fit, asked);
            (believed, beyond) = (now, asked);
        }
    }

    private static int[] BeyondUnder(SpellBelief believed, IReadOnlyList<SpellToJudge> rows) =>
        [
            .. Enumerable
                .Range(0, rows.Count)
                .Where(i => rows[i].Standing == SpellStanding.NotAsked && believed.IsBeyond(i, rows[i].Place, rows[i].Spell)),
        ];

    private static Spell?[] Without(IReadOnlyList<int> asked, IReadOnlyList<SpellToJudge> rows)
    {
        var spells = rows.Select(r => r.Standing == SpellStanding.LeftOut ? (Spell?)null : r.Spell).ToArray();
        foreach (var i in asked)
            spells[i] = null;
        return spells;
    }

    private static Spell?[] CutOff(SpellBelief believed, int[] beyond, IReadOnlyList<SpellToJudge> rows)
    {
        var spells = Without([], rows);
        foreach (var i in beyond)
            spells[i] = believed.CutOff(i, rows[i].Place, rows[i].Spell);
        return spells;
    }
}

/// <summary>One bond's hold or one unit's life as it is judged.</summary>
/// <param name="Place">Its window.</param>
public readonly record struct SpellToJudge(Spell Spell, RowLocationScale Place, SpellStanding Standing);

/// <summary>What somebody said of a spell's dates.</summary>
public enum SpellStanding
{
    /// <summary>Nothing yet: it is judged.</summary>
    NotAsked,

    /// <summary>They are right: it counts, however far out it lies.</summary>
    Trusted,

    /// <summary>They are wrong, and nobody knows them: it never counts.</summary>
    LeftOut,
}

/// <param name="Asked">The places of those that are asked about.</param>
public sealed record OutlyingSpellsFound<TFit>(TFit Fit, IReadOnlyList<int> Asked);

/// <summary>What is believed of each row, as one of a client of whom nothing else is known.</summary>
/// <param name="effects">xᵀβ of a row, by its place.</param>
/// <param name="courses">What may befall the unit of a row, by its place, and its clock; null where nothing may. A dud is no mistake.</param>
public sealed class SpellBelief(
    PopulationParameters population,
    Func<int, double> effects,
    Func<int, (LifeShape Shape, RepairClock Clock)?>? courses = null
)
{
    private readonly ClientEffectNodes _unseen = ClientEffectNodes.For(population);

    public bool IsBeyond(int row, RowLocationScale place, Spell spell)
    {
        if (!MayBeBeyond(row, place, spell))
            return false;
        var (survival, goesOn) = (Predict(row, place), spell.End == SpellEnd.After);
        return survival.Survival(spell.Lower) < (goesOn ? OutlyingSpells.Beyond : OutlyingSpells.Beyond / 2)
            || !goesOn && 1 - survival.Survival(spell.Upper) < OutlyingSpells.Beyond / 2;
    }

    /// <summary>A row that lies beyond, as it is known to have gone on, or to have ended, where it begins to.</summary>
    internal Spell CutOff(int row, RowLocationScale place, Spell spell)
    {
        var believed = Predict(row, place);
        var latest = believed.Quantile(1 - OutlyingSpells.Beyond / 2);
        return spell.Lower > latest || spell.End == SpellEnd.After
            ? Spell.RightCensored(Math.Min(latest, spell.Lower), spell.Weight)
            : Spell.LeftCensored(believed.Quantile(OutlyingSpells.Beyond / 2), spell.Weight);
    }

    /// <summary>Four in five of its like last between these days.</summary>
    public (double From, double To) Usual(int row, RowLocationScale place) => Predict(row, place).Band;

    private LifePrediction Predict(int row, RowLocationScale place) =>
        courses?.Invoke(row) is { } course
            ? new(population, _unseen, place, effects(row), course.Shape, course.Clock)
            : new(population, _unseen, place, effects(row));

    // Clients of whom nothing is known lie evenly around the middle: at least half of the chance there is left. Most rows are settled by it.
    private bool MayBeBeyond(int row, RowLocationScale place, Spell spell)
    {
        var centre = place.Offset + effects(row) + place.Loading * population.PracticeMean;
        var tau = place.Sigma * Math.Exp(population.LogScale);
        return spell.Lower > 0 && LaterThan(spell.Lower) < 2 * OutlyingSpells.Beyond
            || spell.End != SpellEnd.After && 1 - LaterThan(spell.Upper) < 2 * OutlyingSpells.Beyond;

        double LaterThan(double days)
        {
            var z = (Math.Log(days) - centre) / tau;
            return population.Distribution == LifeDistribution.Weibull ? Math.Exp(-Math.Exp(z)) : NormalTail.Q(z);
        }
    }
}
