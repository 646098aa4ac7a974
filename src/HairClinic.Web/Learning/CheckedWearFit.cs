namespace HairClinic.Web.Learning;

/// <summary>A fit of hold or life to the spells whose dates can be believed, and the questions about the others.</summary>
/// <param name="All">Believed or not.</param>
/// <param name="Spells">Those the fit was made from.</param>
public sealed record CheckedWearFit<T>(StoredFit Fit, IReadOnlyList<DateCheck> Asked, IReadOnlyCollection<T> All, IReadOnlyList<T> Spells)
    where T : WearSpell;

/// <summary>Finds it.</summary>
public static class CheckedWearFit
{
    /// <param name="last">The newest fit that was made this way; null before there is one.</param>
    public static CheckedWearFit<HoldSpell> OfHolds(
        IReadOnlyCollection<HoldSpell> all,
        IReadOnlyDictionary<KnownCovariate, double> factors,
        StoredFit? last,
        DateCheckFacts checks,
        LocalDate today,
        Instant at
    ) => Find(all, factors, last, checks, today, spells => WearModelFitter.FitHolds(spells, factors, today, at));

    /// <param name="last">The newest fit that was made this way; null before there is one.</param>
    public static CheckedWearFit<LifeSpell> OfLives(
        IReadOnlyCollection<LifeSpell> all,
        IReadOnlyDictionary<KnownCovariate, double> factors,
        StoredFit? last,
        DateCheckFacts checks,
        LocalDate today,
        Instant at
    ) => Find(all, factors, last, checks, today, spells => WearModelFitter.FitLives(spells, factors, today, at));

    /// <param name="fit">Fits the spells it is given.</param>
    private static CheckedWearFit<T> Find<T>(
        IReadOnlyCollection<T> all,
        IReadOnlyDictionary<KnownCovariate, double> factors,
        StoredFit? last,
        DateCheckFacts checks,
        LocalDate today,
        Func<IReadOnlyList<T>, StoredFit> fit
    )
        where T : WearSpell
    {
        var spells = all.Where(s => s.Window is not null).ToList();
        var rows = spells.ConvertAll(s =>
        {
            var (kind, id, from, until) = s.Dates;
            return new SpellToJudge(s.Spell, s.Window!.Value.Place, checks.Standing(kind, id, from, until));
        });
        var believed = BeliefOf(new WearModel(last, factors), spells);
        IReadOnlyList<T> used = [];
        var found = OutlyingSpells.Find(
            rows,
            believed,
            kept =>
            {
                used = [.. spells.Select((s, i) => kept[i] is { } seen ? As(s, seen) : null).OfType<T>()];
                var fitted = fit(used);
                if (!fitted.Converged)
                    return (fitted, null);
                believed = BeliefOf(new WearModel(fitted, factors), spells);
                return (fitted, believed);
            }
        );
        found.Fit.RecordLeftOut(found.Asked.Count);
        DateCheck[] asked = [.. found.Asked.Select(i => ToCheck(spells[i], believed.Usual(i, rows[i].Place), today))];
        return new CheckedWearFit<T>(found.Fit, asked, all, used);
    }

    private static T As<T>(T spell, Spell seen)
        where T : WearSpell => seen == spell.Spell ? spell : (T)((WearSpell)spell with { Spell = seen });

    // Each row's effect is asked many times.
    private static SpellBelief BeliefOf<T>(WearModel model, List<T> spells)
        where T : WearSpell
    {
        var effects = spells.Select(s => model.Effects(s.Columns)).ToArray();
        return new SpellBelief(model.Population, i => effects[i], i => model.CourseOf(spells[i]));
    }

    private static DateCheck ToCheck(WearSpell spell, (double From, double To) usual, LocalDate today)
    {
        var (kind, id, from, until) = spell.Dates;
        var days = (int)(double.IsFinite(spell.Spell.Upper) ? spell.Spell.Upper : spell.Spell.Lower);
        var dates = new DatesInDoubt(from, until, days, (int)Math.Round(usual.From), (int)Math.Round(usual.To));
        return kind == DateCheckKind.BondHeld
            ? DateCheck.OfBond(Guid.CreateVersion7(), id, dates, today)
            : DateCheck.OfUnit(Guid.CreateVersion7(), kind, id, dates, today);
    }
}
