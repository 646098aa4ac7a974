namespace HairClinic.Web.Learning;

/// <summary>A fit of hold or life to the spells whose dates can be believed, and the questions about the others.</summary>
/// <param name="Clients">Different clients in it.</param>
public sealed record CheckedWearFit(LifetimeFit Fit, int Clients, IReadOnlyList<DateCheck> Asked)
{
    /// <param name="last">The newest fit that was made this way; null before there is one.</param>
    public static CheckedWearFit Find(
        IReadOnlyCollection<WearSpell> all,
        IReadOnlyDictionary<KnownCovariate, double> factors,
        StoredFit? last,
        DateCheckFacts checks,
        LocalDate today
    )
    {
        var spells = all.Where(s => s.Window is not null).ToList();
        var rows = spells.ConvertAll(s =>
        {
            var (kind, id, from, until) = s.Dates;
            return new SpellToJudge(s.Spell, s.Window!.Value.Place, checks.Standing(kind, id, from, until), IsOneRow(s));
        });
        var start = new WearModel(last, factors);
        var believed = BeliefOf(start.Population, start.Effects, spells);
        var found = OutlyingSpells.Find(
            rows,
            believed,
            kept =>
            {
                var fitted = WearModelFitter.Fit([.. spells.Select((s, i) => As(s, kept[i])).OfType<WearSpell>()], factors);
                if (fitted.Fit.Missing is not null)
                    return (fitted, null);
                var coefficients = fitted.Fit.Names.Skip(1).Zip(fitted.Fit.Coefficients.Skip(1)).ToDictionary(c => c.First, c => c.Second);
                believed = BeliefOf(
                    PopulationParameters.FromFit(fitted.Fit),
                    columns => columns.Sum(c => c.Value * coefficients.GetValueOrDefault(c.Name)),
                    spells
                );
                return (fitted, believed);
            }
        );
        return new CheckedWearFit(
            found.Fit.Fit,
            found.Fit.Clients,
            [.. found.Asked.Select(i => ToCheck(spells[i], believed.Usual(i, rows[i].Place), today))]
        );
    }

    private static bool IsOneRow(WearSpell spell) => spell.Rows.ToList() is [{ Entered: 0 } row] && row.Spell == spell.Spell;

    private static WearSpell? As(WearSpell spell, Spell? kept) =>
        kept is not { } seen ? null
        : seen == spell.Spell ? spell
        : spell with
        {
            Spell = seen,
        };

    // Each row's effect is asked many times.
    private static SpellBelief BeliefOf(
        PopulationParameters population,
        Func<IReadOnlyList<CovariateValue>, double> effects,
        IReadOnlyList<WearSpell> spells
    )
    {
        var known = spells.Select(s => effects(s.Columns)).ToArray();
        return new SpellBelief(population, i => known[i]);
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
