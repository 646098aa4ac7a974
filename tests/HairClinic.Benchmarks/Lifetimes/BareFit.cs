using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using MathNet.Numerics.LinearAlgebra;

namespace HairClinic.Benchmarks.Lifetimes;

/// <summary>The baseline: Newton's method for a Weibull model written down as one would on a page, in one thread.</summary>
internal static class BareFit
{
    /// <summary>Row by row: ln t, whether it ended, 1, covariates.</summary>
    public static double[][] Lay(Spell[] spells, CovariateColumn[] columns) =>
        [
            .. spells.Select(
                (spell, i) =>
                    new[] { Math.Log(spell.Lower), spell.End == SpellEnd.At ? 1.0 : 0, 1 }
                        .Concat(columns.Select(column => column.Values[i]))
                        .ToArray()
            ),
        ];

    public static double[] Fit(double[][] rows, int covariates)
    {
        var size = covariates + 2;
        var parameters = new double[size];
        parameters[0] = rows.Average(row => row[0]) + 0.3;
        parameters[^1] = Math.Log(0.78 * Math.Sqrt(rows.Average(row => Math.Pow(row[0] - parameters[0], 2))));
        for (var iteration = 0; iteration < 50; iteration++)
        {
            var (gradient, hessian) = (new double[size], new double[size, size]);
            var scale = Math.Exp(parameters[^1]);
            foreach (var row in rows)
            {
                var centre = 0.0;
                for (var j = 0; j < size - 1; j++)
                    centre += parameters[j] * row[j + 2];
                var z = (row[0] - centre) / scale;
                var e = Math.Exp(z);
                var g = row[1] - e;
                for (var j = 0; j < size - 1; j++)
                {
                    gradient[j] -= g / scale * row[j + 2];
                    for (var k = 0; k <= j; k++)
                        hessian[j, k] += e / (scale * scale) * row[j + 2] * row[k + 2];
                    hessian[size - 1, j] -= (g - z * e) / scale * row[j + 2];
                }
                gradient[^1] -= z * g + row[1];
                hessian[size - 1, size - 1] -= z * (g - z * e);
            }
            var bend = Matrix<double>.Build.Dense(size, size, (j, k) => hessian[Math.Max(j, k), Math.Min(j, k)]);
            var step = bend.Solve(Vector<double>.Build.Dense(gradient));
            var largest = step.AbsoluteMaximum();
            if (largest > 0.5)
                step *= 0.5 / largest;
            for (var j = 0; j < size; j++)
                parameters[j] += step[j];
            if (largest < 1e-8)
                break;
        }
        return parameters;
    }
}
