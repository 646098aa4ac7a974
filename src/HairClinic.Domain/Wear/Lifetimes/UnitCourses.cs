namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>What may befall a unit besides wearing out by its curve: to be a dud from the start, and to be repaired on the way.</summary>
/// <param name="DudShare">π: the share of units that last much shorter than their curve says; 0 to less than 1.</param>
/// <param name="RepairRate">κ: after a repair each worn day counts as eᵏ (<see cref="RepairClock"/>).</param>
/// <param name="RepairChance">ρ: the chance that a unit is repaired once before it is worn out; 0 to less than 1.</param>
/// <remarks>Which shares, and when repairs come, is from simulation, no source.</remarks>
public readonly record struct UnitCourses(double DudShare, double RepairRate, double RepairChance)
{
    // A repair comes at such a share of the life, one as likely as another.
    private static readonly double[] RepairsAt = [0.36, 0.49, 0.61, 0.74];

    /// <summary>The chance that the next unit is repaired, by those that ended.</summary>
    public static double RepairChanceFrom(int repaired, int ended) => (1.0 + repaired) / (10.0 + ended);

    /// <summary>How much shorter a dud lasts; null where nothing was learnt of it.</summary>
    public DudDrop? Drop { get; init; }

    /// <summary>Each of these scales' branches by what may befall the unit.</summary>
    /// <param name="wasRepaired">It was repaired already: its clock says so, and no other repair is looked ahead to.</param>
    public IEnumerable<LifeBranch> Apply(IEnumerable<LifeBranch> scales, bool wasRepaired)
    {
        var (duds, repairs) = (ByDud().ToList(), wasRepaired || RepairChance == 0 ? [(1, 0, 1)] : ByRepair().ToList());
        return from scale in scales
            from dud in duds
            from repair in repairs
            select new LifeBranch(
                scale.Weight * dud.Share * repair.Share,
                scale.Shift - dud.Drop + repair.Shift,
                scale.Tau,
                scale.AgeFactor * repair.AgeFactor
            );
    }

    private IEnumerable<(double Drop, double Share)> ByDud()
    {
        yield return (0, 1 - DudShare);
        if (DudShare == 0)
            yield break;
        foreach (var (drop, share) in (Drop ?? DudDrop.Unlearnt).Nodes)
            yield return (drop, DudShare * share);
    }

    // Repaired at r = fT, what is left of T is worn at another rate: it lasts T·(f + (1 − f)·e^(−κ)), and was not repaired before r.
    private IEnumerable<(double Share, double Shift, double AgeFactor)> ByRepair()
    {
        yield return (1 - RepairChance, 0, 1);
        foreach (var at in RepairsAt)
        {
            var lasts = at + (1 - at) * Math.Exp(-RepairRate);
            yield return (RepairChance / RepairsAt.Length, Math.Log(lasts), lasts / at);
        }
    }
}
