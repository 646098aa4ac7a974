using HairClinic.Domain.LoadAhead;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Money;

/// <summary>What a month of wear costs a client, in minor units of one currency: the unit's share and the rebonds.</summary>
/// <remarks>
/// The figures are unit price ÷ expected worn months + rebonds a month × price. The band is between the 10 % and the 90 % point over
/// clients: one unit's life varies as predicted; rebonds even out within a life, so of the hold only what differs between
/// clients counts. The two are taken as independent. Supplies are not in it.
/// </remarks>
/// <param name="RebondsAMonth">Null where nothing is known of the hold.</param>
/// <param name="Visits">Null where the rebond has no price in this currency: then the month is the unit's share alone.</param>
public sealed record MonthlyWearCost(double WornMonths, double? RebondsAMonth, double Unit, double? Visits, double Low, double High)
{
    /// <summary>A twelfth of a mean Gregorian year, 365.2425 days.</summary>
    public const double DaysAMonth = 365.2425 / 12;
    private const int Shares = 400;

    public double Month => Unit + (Visits ?? 0);

    /// <param name="unitPrice">Minor units.</param>
    /// <param name="life">Worn days of such a unit on an unknown client.</param>
    /// <param name="hold">Days such a bond holds on an unknown client; null where not known.</param>
    /// <param name="closesDays">The last day of the hold window, which no target lies beyond.</param>
    /// <param name="visitPrice">Minor units of the same currency; null where there is none.</param>
    public static MonthlyWearCost Estimate(double unitPrice, LifePrediction life, LifePrediction? hold, int closesDays, double? visitPrice)
    {
        var months = Mean(life) / DaysAMonth;
        var rates = hold is null ? [] : RebondRates(hold, closesDays);
        var rate = rates.Length == 0 ? (double?)null : 1 / rates.Sum(r => r.Share / r.AMonth);
        var visits = rate is { } often && visitPrice is { } price ? often * price : (double?)null;
        (double Share, double AMonth)[] paid = visits is null ? [(1, 0)] : rates;
        var costs = new List<(double Cost, double Share)>();
        for (var i = 0; i < Shares; i++)
        {
            var worn = life.Quantile((i + 0.5) / Shares) / DaysAMonth;
            costs.AddRange(paid.Select(p => (unitPrice / worn + p.AMonth * (visitPrice ?? 0), p.Share / Shares)));
        }
        costs.Sort();
        return new(months, rate, unitPrice / months, visits, At(costs, 0.1), At(costs, 0.9));
    }

    // ∫ S over days.
    private static double Mean(LifePrediction life)
    {
        var (sum, before) = (0.0, 1.0);
        for (var day = 1; before > 1e-7 && day < 10_000; day++)
        {
            var after = life.Survival(day);
            sum += (before + after) / 2;
            before = after;
        }
        return sum;
    }

    // The next rebond is when it lifts or at the target, as in the weeks ahead.
    private static (double Share, double AMonth)[] RebondRates(LifePrediction hold, int closesDays)
    {
        var target = Math.Clamp(hold.LastDayAtOrAbove(Wear.HoldPrior.TargetSurvival), 1, Math.Max(1, closesDays));
        var (chances, survival) = (new double[target + 1], new double[target]);
        return
        [
            .. hold.MixtureComponents()
                .Select(place =>
                {
                    place.Hold.SurvivalByDay(survival);
                    RebondIntervalCalculator.FillChances(survival, target, ageDays: 0, chances);
                    var days = chances.Select((chance, day) => chance * day).Sum();
                    return (place.Share, DaysAMonth / days);
                }),
        ];
    }

    private static double At(List<(double Cost, double Share)> sorted, double probability)
    {
        var sum = 0.0;
        foreach (var (cost, share) in sorted)
        {
            if ((sum += share) >= probability)
                return cost;
        }
        return sorted[^1].Cost;
    }
}
