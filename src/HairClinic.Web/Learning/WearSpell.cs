namespace HairClinic.Web.Learning;

/// <summary>One bond's hold or one unit's life as curves and the fit read it.</summary>
/// <param name="ClientId">Null for a unit of nobody's.</param>
/// <param name="Window">Null where the practice's row has no width: nothing is learnt from it.</param>
public abstract record WearSpell(Guid? ClientId, Spell Spell, WindowPrior? Window, IReadOnlyList<WearCovariate> Columns)
{
    /// <summary>As the fit reads it: one row, or one for each stretch over which the covariates stood still.</summary>
    public virtual IEnumerable<WearRow> Rows => [new WearRow(Spell, 0, Columns)];
}

/// <param name="Entered">Where the stretch began; 0 for the whole spell.</param>
public readonly record struct WearRow(Spell Spell, double Entered, IReadOnlyList<WearCovariate> Columns);
