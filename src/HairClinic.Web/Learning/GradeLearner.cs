namespace HairClinic.Web.Learning;

/// <summary>Learns how a practice's grades follow from its units' lives, and whether they tell enough to be used.</summary>
public static class GradeLearner
{
    // What grades mean in a practice changes slowly; to learn it takes as long as the fit of lives itself.
    private const int EveryDays = 60;

    // Where they did not tell yet, more may have come.
    private const int SoonerDays = 14;

    // Where half as many again have ended since, as when a book is brought in sheet by sheet, what was learnt is of another book.
    private const double Grown = 1.5;

    /// <summary>Puts on a fit what is learnt of grades: what the last one knew, or where that is old or was nothing, what the records say now.</summary>
    /// <param name="last">The newest usable fit before it; null where there is none.</param>
    public static void Learn(
        StoredFit fit,
        StoredFit? last,
        IReadOnlyList<LifeSpell> lives,
        IReadOnlyDictionary<KnownCovariate, double> factors
    )
    {
        if (!fit.Converged)
            return;
        // The latest tell most of how people grade now.
        var graded = lives.Where(l => l.Window is not null).OrderByDescending(l => l.FirstWornOn).Where(l => l.StructuralGrades.Looks > 0);
        if (
            last?.GradesLearntOn is { } on
            && fit.DataCut < on.PlusDays(last.GradesTell ? EveryDays : SoonerDays)
            // As the gate counts them. Of too few to tell, some more are no other book: a large practice's latest are nearly all in wear.
            && graded.Take(GradeLinkFitter.MostUnits).Count(l => l.Spell.End != SpellEnd.After)
                < Grown * Math.Max(last.GradedEnded, GradeGate.FewestEnded)
        )
        {
            fit.KeepGrades(last);
            return;
        }
        var model = new WearModel(fit, factors);
        var units = graded.Select(l => UnitOf(l, model)).ToList();
        if (units.Count(u => u.HasEnded) < GradeGate.FewestEnded)
            return;
        var learnt = GradeLinkFitter.Fit(units);
        if (learnt.Converged)
            fit.RecordGrades(learnt.Link, GradeGate.Weigh(units, learnt.Link), fit.DataCut);
    }

    // As one of a client of whom nothing is known: what the client's own effect may be widens the scale (the variance of ln T is π²/6·τ² plus its own).
    private static GradedUnit UnitOf(LifeSpell life, WearModel model)
    {
        var (window, population) = (life.Window!.Value, model.Population);
        var tau = window.Sigma * Math.Exp(population.LogScale);
        var client = window.Width * population.ClientSpread;
        return new GradedUnit(
            life.SpellAt(model.RepairRate),
            window,
            window.Centre + model.Effects(life.Columns) + window.Width * population.PracticeMean,
            Math.Sqrt(tau * tau + 6 * client * client / (Math.PI * Math.PI)),
            life.StructuralGrades
        );
    }
}
