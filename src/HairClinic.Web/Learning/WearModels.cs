using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>The practice's two models, of hold and of life, as they stand.</summary>
public sealed record WearModels(WearModel Hold, WearModel Life)
{
    public static async Task<WearModels> LoadAsync(ClinicDb db, CancellationToken cancellation) =>
        (await WithSettingsAsync(db, cancellation)).WearModels;

    /// <summary>Two round trips for what hangs together: the practice's settings, and what it believes.</summary>
    public static async Task<(PracticeSettings Settings, WearModels WearModels)> WithSettingsAsync(
        ClinicDb db,
        CancellationToken cancellation
    )
    {
        var head = await db
            .PracticeSettings.AsNoTracking()
            .Select(s => new
            {
                Settings = s,
                Hold = Usable(db, WearQuantity.Hold).FirstOrDefault(),
                Life = Usable(db, WearQuantity.Life).FirstOrDefault(),
            })
            .SingleAsync(cancellation);
        var factors = await FactorsAsync(db, cancellation);
        return (
            head.Settings,
            new(
                new WearModel(head.Hold, FactorsFor(factors, WearQuantity.Hold)),
                new WearModel(head.Life, FactorsFor(factors, WearQuantity.Life))
            )
        );
    }

    /// <summary>The fits that count, the newest first: of today's model, with an estimate, from something seen.</summary>
    /// <remarks>A recalculation of an empty book knows of no spread among clients: it would make a client's own bonds count for nothing.</remarks>
    public static IQueryable<StoredFit> Usable(ClinicDb db, WearQuantity quantity) =>
        db
            .StoredFits.AsNoTracking()
            .Where(f => f.Quantity == quantity && f.ModelVersion == StoredFit.CurrentModel && f.Converged && f.Spells > 0)
            .OrderByDescending(f => f.FittedAt);

    /// <summary>Staff and jobs read the factor rows; a client's own page does without.</summary>
    public static Task<List<WearFactor>> FactorsAsync(ClinicDb db, CancellationToken cancellation) =>
        db.WearFactors.AsNoTracking().ToListAsync(cancellation);

    public static Dictionary<WearHabit, double> FactorsFor(IEnumerable<WearFactor> factors, WearQuantity quantity) =>
        factors.Where(f => f.Quantity == quantity).ToDictionary(f => f.Habit, f => f.Factor);
}
