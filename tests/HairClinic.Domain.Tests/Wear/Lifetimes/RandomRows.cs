using CsCheck;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>Random spells of every kind with covariates, windows and clients.</summary>
internal static class RandomRows
{
    private static readonly Gen<Spell> Spell = Gen.Select(
        Gen.Int[0, 3],
        Gen.Double[5, 80],
        Gen.Double[1, 30],
        Gen.Double[0.5, 3],
        (kind, from, length, weight) =>
            kind switch
            {
                0 => HairClinic.Domain.Wear.Curves.Spell.Exact(from, weight),
                1 => HairClinic.Domain.Wear.Curves.Spell.RightCensored(from, weight),
                2 => HairClinic.Domain.Wear.Curves.Spell.LeftCensored(from, weight),
                _ => HairClinic.Domain.Wear.Curves.Spell.FromBounds(from, from + length, weight),
            }
    );

    /// <summary>Rows, and parameters to look at them from; late ones are entered on the way.</summary>
    public static Gen<(LifetimeFitRows Rows, double[] Parameters)> Of(
        LifeDistribution distribution,
        bool windows,
        bool clients,
        bool late = false
    ) =>
        from count in Gen.Int[3, 40]
        from spells in Spell.Array[count]
        from heat in Gen.Double[-1, 1].Array[count]
        from size in Gen.Double[40, 60].Array[count]
        from wide in Gen.Bool.Array[count]
        from entered in Gen.Double[0, 1].Array[count]
        from whose in Gen.Int[-1, 6].Array[count]
        from parameters in Gen.Double[-0.3, 0.3].Array[4]
        select (
            LifetimeFitRows.Create(
                spells,
                [new CovariateColumn("heat", heat), new CovariateColumn("size", size)],
                windows ? [.. wide.Select(w => WindowPrior.FromWindow(distribution, 28, w ? 56 : 42).Place)] : [],
                clients ? whose : [],
                late ? [.. spells.Zip(entered, (spell, share) => share < 0.5 ? 0 : share * spell.Lower)] : []
            ),
            windows
                ? new[] { parameters[0], parameters[1], parameters[2] / 50, parameters[3] }
                : [3.5 + parameters[0], parameters[1], parameters[2] / 10, parameters[3] - 0.7]
        );
}
