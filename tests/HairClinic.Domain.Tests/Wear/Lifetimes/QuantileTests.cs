using HairClinic.Domain.Tests.Reference;
using HairClinic.Domain.Wear.Lifetimes;
using MathNet.Numerics.Distributions;

namespace HairClinic.Domain.Tests.Wear.Lifetimes;

/// <summary>Against quantiles.csv (its first line names the source): ours, and those of the library ours lean on.</summary>
public sealed class QuantileTests
{
    [Fact]
    public void Quantiles_agree()
    {
        var table = Table.Read("quantiles.csv");
        foreach (var row in table.Rows)
        {
            var words = row[0].TrimEnd(')').Split('(', ';').Select(word => word.Split('=')[^1]).ToArray();
            var (first, second, p) = (Table.Number(words[1]), Table.Number(words[2]), table.Number(row, "p"));
            var quantile = words[0] switch
            {
                "normal" => Normal.InvCDF(first, second, p),
                "gamma" => Gamma.InvCDF(first, 1 / second, p),
                "weibull" => Of(LifeDistribution.Weibull, Math.Log(second), 1 / first, p),
                _ => Of(LifeDistribution.LogNormal, first, second, p),
            };
            Assert.Equal(table.Number(row, "q"), quantile, 1e-7 * (1 + Math.Abs(quantile)));
        }
        Assert.Equal(60, table.Rows.Count);
    }

    private static double Of(LifeDistribution distribution, double centre, double scale, double probability)
    {
        var population = new PopulationParameters(distribution, Math.Log(scale), [], centre, 0, 0, 0);
        return new LifePrediction(population, ClientEffectNodes.For(population), RowLocationScale.Plain).Quantile(probability);
    }
}
