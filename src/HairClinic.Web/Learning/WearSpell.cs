namespace HairClinic.Web.Learning;

/// <summary>One bond's hold or one unit's life as curves and the fit read it.</summary>
/// <param name="ClientId">Null for a unit of nobody's.</param>
/// <param name="Window">Null where the practice's row has no width: nothing is learnt from it.</param>
public abstract record WearSpell(Guid? ClientId, Spell Spell, WindowPrior? Window, IReadOnlyList<CovariateValue> Columns)
{
    /// <summary>Whose dates it was read from, and which: what is asked where nobody would believe it.</summary>
    public abstract (DateCheckKind Kind, Guid Id, LocalDate From, LocalDate? Until) Dates { get; }

    /// <summary>As the fit reads it: one row, or one for each stretch over which the covariates stood still.</summary>
    public virtual IEnumerable<CovariateSegment> Rows => [new CovariateSegment(Spell, 0, Columns)];
}

/// <param name="Entered">Where the stretch began; 0 for the whole spell.</param>
public readonly record struct CovariateSegment(Spell Spell, double Entered, IReadOnlyList<CovariateValue> Columns);

/// <summary>One covariate of a spell by its stable name, as fits store it, and its value; what is not there is 0.</summary>
public readonly record struct CovariateValue(string Name, double Value)
{
    public const string AdhesivePrefix = "adhesive:";
    public const string BasePrefix = "base:";
    public const string WorkshopPrefix = "workshop:";

    public static CovariateValue Adhesive(Guid id) => new(AdhesivePrefix + id, 1);

    public static CovariateValue ForBaseMaterial(Guid id) => new(BasePrefix + id, 1);

    public static CovariateValue Workshop(Guid id) => new(WorkshopPrefix + id, 1);

    public static CovariateValue For(KnownCovariate habit, double value = 1) => new(habit.ToString(), value);

    /// <summary>The habit a column stands for; null for adhesives, bases and workshops.</summary>
    public static KnownCovariate? ParseHabit(string name) => Enum.TryParse<KnownCovariate>(name, out var habit) ? habit : null;
}
