namespace HairClinic.Web.Learning;

/// <summary>One bond's hold or one unit's life as curves and the fit read it.</summary>
/// <param name="ClientId">Null for a unit of nobody's.</param>
/// <param name="Window">Null where the practice's row has no width: nothing is learnt from it.</param>
public abstract record WearSpell(Guid? ClientId, Spell Spell, WindowPrior? Window, IReadOnlyList<CovariateValue> Columns)
{
    /// <summary>Whose dates it was read from, and which: what is asked where nobody would believe it.</summary>
    public abstract (DateCheckKind Kind, Guid Id, LocalDate From, LocalDate? Until) Dates { get; }

    /// <summary>As the fit reads it, where a unit's own clock runs otherwise after a repair.</summary>
    /// <param name="repairRate">κ of the fit.</param>
    public virtual Spell SpellAt(double repairRate) => Spell;

    /// <summary>The kind of unit whose share of duds it has; null for a bond.</summary>
    public virtual Guid? DudKind => null;
}

/// <summary>One covariate of a spell by its stable name, as fits store it, and its value; what is not there is 0.</summary>
public readonly record struct CovariateValue(string Name, double Value)
{
    public const string AdhesivePrefix = "adhesive:";
    public const string BasePrefix = "base:";
    public const string WorkshopPrefix = "workshop:";
    public const string LotPrefix = "lot:";
    public const string SeasonPrefix = "season:";
    public const string CohortPrefix = "cohort:";

    public static CovariateValue Adhesive(Guid id) => new(AdhesivePrefix + id, 1);

    public static CovariateValue ForBaseMaterial(Guid id) => new(BasePrefix + id, 1);

    public static CovariateValue Workshop(Guid id) => new(WorkshopPrefix + id, 1);

    public static CovariateValue Lot(Guid id) => new(LotPrefix + id, 1);

    /// <summary>Of the units or bonds that an alarm of the watch named.</summary>
    public static CovariateValue Cohort(Guid alarmId) => new(CohortPrefix + alarmId, 1);

    /// <summary>The season of a day, as the fit reads it: two columns.</summary>
    public static CovariateValue[] Season(LocalDate day)
    {
        var (cosine, sine) = HoldSeason.Of(day);
        return [new(SeasonPrefix + "cosine", cosine), new(SeasonPrefix + "sine", sine)];
    }

    /// <summary>What is assumed of it until the records say better.</summary>
    public static NormalPrior PriorOf(string name, IReadOnlyDictionary<KnownCovariate, double> factors) =>
        name.StartsWith(LotPrefix, StringComparison.Ordinal) ? HoldSeason.LotPrior
        : name.StartsWith(SeasonPrefix, StringComparison.Ordinal) ? HoldSeason.Prior
        : name.StartsWith(CohortPrefix, StringComparison.Ordinal) ? CohortShift.Prior
        : ParseHabit(name) is { } habit && factors.TryGetValue(habit, out var factor) ? NormalPrior.OfFactor(factor)
        : LifePriors.UsualCoefficient;

    /// <summary>A lot or a season of which nothing is known is taken as any other: that they differ is in the spread of holds already.</summary>
    public static bool IsUsualUntilTold(string name) =>
        name.StartsWith(LotPrefix, StringComparison.Ordinal) || name.StartsWith(SeasonPrefix, StringComparison.Ordinal);

    /// <summary>Of these it is learnt how much they differ.</summary>
    public static bool IsBaseOrWorkshop(string name) =>
        name.StartsWith(BasePrefix, StringComparison.Ordinal) || name.StartsWith(WorkshopPrefix, StringComparison.Ordinal);

    public static CovariateValue For(KnownCovariate habit, double value = 1) => new(habit.ToString(), value);

    /// <summary>The habit a column stands for; null for adhesives, bases and workshops.</summary>
    public static KnownCovariate? ParseHabit(string name) => Enum.TryParse<KnownCovariate>(name, out var habit) ? habit : null;
}
