namespace HairClinic.Web.Learning;

/// <summary>A fit of hold or life to the spells whose dates can be believed, and the questions about the others.</summary>
public sealed record CheckedWearFit(StoredFit Fit, IReadOnlyList<DateCheck> Asked)
{
    /// <param name="last">The newest fit that was made this way; null before there is one.</param>
    /// <param name="fit">Fits the spells it is given.</param>
    public static CheckedWearFit Find<T>(
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
        var found = OutlyingSpells.Find(
            rows,
            believed,
            kept =>
            {
                var fitted = fit([.. spells.Select((s, i) => kept[i] is { } seen ? As(s, seen) : null).OfType<T>()]);
                if (!fitted.Converged)
                    return (fitted, null);
                believed = BeliefOf(new WearModel(fitted, factors), spells);
                return (fitted, believed);
            }
        );
        found.Fit.RecordLeftOut(found.Asked.Count);
        return new CheckedWearFit(found.Fit, [.. found.Asked.Select(i => ToCheck(spells[i], believed.Usual(i, rows[i].Place), today))]);
    }

    private static T As<T>(T spell, Spell seen)
        where T : WearSpell => seen == spell.Spell ? spell : (T)((WearSpell)spell with { Spell = seen });

    // Each row's effect is asked many times.
    private static SpellBelief BeliefOf(WearModel model, IReadOnlyList<WearSpell> spells)
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
