using HairClinic.Domain.Bonding;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Web.Demo;
using HairClinic.Web.Demo.Truth;
using NodaTime;

namespace HairClinic.Web.Tests.Demo;

/// <summary>Spells as a book tells them, with what each may depend on, and the fit to them; what is true stays outside.</summary>
public static class ToldSpells
{
    /// <summary>One row for the fit: its spell, its window's place, whose it is, and its covariates.</summary>
    public sealed record Row(Spell Spell, WindowPrior Window, int Client, double[] Values);

    /// <summary>A parameter as it was put in, and as it came out.</summary>
    public sealed record Found(string Name, double Truth, double Estimate, double StdError)
    {
        /// <summary>Of the 95 % band: the normal 97.5 % point.</summary>
        private const double Half = 1.959964;

        public (double From, double To) Band => (Estimate - Half * StdError, Estimate + Half * StdError);

        public bool Holds => Band.From <= Truth && Truth <= Band.To;
    }

    public static Row Hold(
        Bond bond,
        (int From, int To) weeks,
        string baseName,
        string product,
        string? lot,
        string salon,
        int client,
        LocalDate today
    ) =>
        new(
            Spell.FromHold(HoldObservation.From(bond, today)),
            WindowPrior.FromWindow(LifeDistribution.Weibull, weeks.From * 7, weeks.To * 7),
            client,
            [
                product == DemoPractice.Products[1].Name ? 1 : 0,
                product == DemoPractice.Products[2].Name ? 1 : 0,
                DemoParameters.HasPolyRim(baseName) ? 1 : 0,
                salon == DemoPractice.Pier.Name ? 1 : 0,
                lot == DemoParameters.BadLotCode(today) ? 1 : 0,
                bond.WaitsKept == false ? 1 : 0,
            ]
        );

    /// <remarks>
    /// Nobody looks at a unit on a head: that it is worn out shows only at a take-down, so a unit still in wear is known
    /// to be sound up to its last inspection, not up to today.
    /// </remarks>
    public static Row Life(IReadOnlyList<UnitLook> inspections, (int From, int To) life, string? workshop, int client) =>
        new(
            UnitLifeBuilder.FromInspections(inspections.ToArray(), inspections.Count == 0 ? 0 : inspections[^1].WornDays),
            WindowPrior.FromWindow(LifeDistribution.Weibull, life.From, life.To),
            client,
            [workshop == DemoParameters.Quay.Name ? 1 : 0, workshop == DemoParameters.Alder.Name ? 1 : 0]
        );

    public static IReadOnlyList<Found> FitHold(IReadOnlyList<Row> rows) =>
        Fit(
            rows,
            DemoParameters.HoldPractice,
            DemoParameters.HoldLogScale,
            ("adhesive B", DemoParameters.AdhesiveFactor(DemoPractice.Products[1])),
            ("tape", DemoParameters.AdhesiveFactor(DemoPractice.Products[2])),
            ("poly rim", DemoParameters.PolyRim),
            ("sea air", DemoParameters.SeaAir),
            ("bad lot", DemoParameters.BadLot),
            ("waits cut", DemoParameters.WaitsCut)
        );

    public static IReadOnlyList<Found> FitLife(IReadOnlyList<Row> rows) =>
        Fit(
            rows,
            DemoParameters.LifePractice,
            DemoParameters.LifeLogScale,
            ("Quay", DemoParameters.Quay.Life),
            ("Alder", DemoParameters.Alder.Life)
        );

    private static List<Found> Fit(IReadOnlyList<Row> rows, double practice, double logScale, params (string Name, double Factor)[] truths)
    {
        var laid = LifetimeFitRows.Create(
            rows.Select(r => r.Spell).ToArray(),
            [.. truths.Select((t, j) => new CovariateColumn(t.Name, [.. rows.Select(r => r.Values[j])]))],
            rows.Select(r => r.Window.Place).ToArray(),
            rows.Select(r => r.Client).ToArray()
        );
        var priors = rows[0].Window.ToLifePriors([.. truths.Select(_ => LifePriors.UsualCoefficient)]);
        var fit = LifetimeFitter.Fit(LifeDistribution.Weibull, laid, priors);
        Assert.Null(fit.Missing);
        return
        [
            new("practice", practice, fit.Coefficients[0], fit.StdError(0)),
            .. truths.Select((t, j) => new Found(t.Name, Math.Log(t.Factor), fit.Coefficients[j + 1], fit.StdError(j + 1))),
            new("scale", logScale, fit.LogScale, fit.StdError(fit.Coefficients.Count)),
        ];
    }
}
