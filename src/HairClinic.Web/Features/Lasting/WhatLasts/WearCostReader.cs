using HairClinic.Web.Data;
using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Lasting;

/// <summary>What a month of wear costs, by kind or base; amounts of different currencies never meet.</summary>
internal sealed class WearCostReader(ClinicDb db, LastingSide by, CancellationToken cancellation)
{
    /// <param name="models">What is expected of lives and holds.</param>
    /// <param name="lives">The units worn so far, the holds of the bonds on them.</param>
    public async Task<List<WearCostRow>> ReadAsync(WearModelPair models, List<LifeSpell> lives, List<HoldSpell> holds)
    {
        var names = await LastingNames.LoadAsync(db, by, cancellation);
        var bySide = (await LifeSpellBuilder.UnitKindsAsync(db, cancellation)).Values.ToLookup(s =>
            by == LastingSide.Kind ? s.Id : s.BaseMaterialId
        );
        var prices = (
            await db
                .HairSystems.Where(u => u.PriceMinor != null && u.Currency != null)
                .Select(u => new
                {
                    u.UnitKindId,
                    Price = u.PriceMinor!.Value,
                    Currency = u.Currency!,
                })
                .ToListAsync(cancellation)
        ).ToLookup(u => u.UnitKindId);
        var rebonds = (
            await db
                .ServiceKinds.AsNoTracking()
                .Where(s => !s.Retired && s.Purpose == ServicePurpose.Rebond && s.PriceMinor != null && s.Currency != null)
                .OrderBy(s => s.Id)
                .ToListAsync(cancellation)
        ).ToLookup(s => s.Currency!, s => s.PriceMinor!.Value);
        var costs = new List<WearCostRow>();
        foreach (var kinds in bySide)
        {
            var worn = lives.Where(l => kinds.Any(k => k.Id == l.UnitKindId)).Select(l => l.Spell).ToList();
            var life = LifeOf(models.Life, [.. kinds]);
            var hold = HoldOf(models.Hold, kinds.First().BaseMaterialId, holds);
            foreach (var priced in kinds.SelectMany(k => prices[k.Id]).GroupBy(u => u.Currency, u => u.Price))
            {
                var visit = rebonds[priced.Key].Select(p => (double?)p).FirstOrDefault();
                costs.Add(
                    new WearCostRow(
                        names.GetValueOrDefault(kinds.Key) ?? "",
                        priced.Key,
                        priced.Count(),
                        worn.Count,
                        worn.Count(s => s.End != SpellEnd.After),
                        priced.Average(),
                        visit,
                        MonthlyWearCost.Estimate(priced.Average(), life, hold?.Hold, hold?.ClosesDays ?? 1, visit)
                    )
                );
            }
        }
        return [.. costs.OrderBy(c => c.Currency, StringComparer.Ordinal).ThenBy(c => c.Cost.Month)];
    }

    // A base made by several workshops is taken without any workshop's effect.
    private static LifePrediction LifeOf(WearModel model, IReadOnlyList<UnitKindTerms> kinds)
    {
        var columns = new List<CovariateValue> { CovariateValue.ForBaseMaterial(kinds[0].BaseMaterialId) };
        if (kinds.Select(k => k.WorkshopId).Distinct().ToList() is [{ } workshop])
            columns.Add(CovariateValue.Workshop(workshop));
        return model.PredictUnit([], kinds[0], columns, repairedAt: null);
    }

    /// <summary>Of the adhesive this base is bonded with most.</summary>
    private static (LifePrediction Hold, int ClosesDays)? HoldOf(WearModel model, Guid baseId, List<HoldSpell> holds)
    {
        var usual = holds
            .Where(h => h.BaseMaterialId == baseId && h.Window is not null)
            .GroupBy(h => (h.AdhesiveId, h.Window))
            .MaxBy(g => g.Count());
        if (usual?.Key.Window is not { } window)
            return null;
        var columns = new List<CovariateValue> { CovariateValue.ForBaseMaterial(baseId) };
        if (usual.Key.AdhesiveId is { } adhesive)
            columns.Add(CovariateValue.Adhesive(adhesive));
        // A window's last day is the 90 % point of what it assumes.
        var assumed = PopulationParameters.FromPriors(window);
        var closes = (int)Math.Round(new LifePrediction(assumed, ClientEffectNodes.For(assumed), window.Place).Quantile(0.9));
        return (model.Predict([], window, columns), closes);
    }
}

/// <param name="Priced">Units whose price is known, in this currency; their mean is <paramref name="UnitPrice"/>, minor units.</param>
/// <param name="Worn">Units ever worn, and how many of them wore out.</param>
/// <param name="VisitPrice">Of a rebond, minor units; null where it has none in this currency.</param>
public sealed record WearCostRow(
    string Name,
    string Currency,
    int Priced,
    int Worn,
    int Ended,
    double UnitPrice,
    double? VisitPrice,
    MonthlyWearCost Cost
)
{
    public bool CanTell => Ended >= LastingGroup.FewestEnded;
}
