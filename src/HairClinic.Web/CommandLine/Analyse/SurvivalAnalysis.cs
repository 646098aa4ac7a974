namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>The curves, the test and the fit of one table.</summary>
public sealed class SurvivalAnalysis
{
    public SurvivalAnalysis(SurvivalInput input, LifeDistribution distribution, WindowPrior? window)
    {
        (Input, Distribution, Window) = (input, distribution, window);
        Groups = input.Group is { } group ? [.. group.Names.Select((name, g) => (name, SpellsOf(g)))] : [(null, input.Spells)];
        AreIntervals = !SurvivalCurve.CanEstimate(input.Spells);
        LogRank = input.Group is { } compared ? LogRank.Test(input.Spells, compared.Of) : null;
        Fit = FitOf(input.Columns);
        if (AreIntervals && input.Group is not null)
            (Without, With) = (FitOf(Others()), FitOf([.. Others(), .. input.GroupColumns]));
    }

    public SurvivalInput Input { get; }

    public LifeDistribution Distribution { get; }

    /// <summary>Null for plain maximum likelihood.</summary>
    public WindowPrior? Window { get; }

    public IReadOnlyList<(string? Name, Spell[] Spells)> Groups { get; }

    public bool AreIntervals { get; }

    public LogRank? LogRank { get; }

    public LifetimeFit Fit { get; }

    /// <summary>For intervals groups are compared by the model's likelihood: without the group and with it.</summary>
    public LifetimeFit? Without { get; }

    public LifetimeFit? With { get; }

    /// <summary>The intercept of ln T itself: the window's place and its share of δ.</summary>
    public double Coefficient(int k) =>
        k == 0 && Window is { } window ? window.Centre + window.Width * Fit.Coefficients[0] : Fit.Coefficients[k];

    public double Scale => Fit.Scale * (Window?.Sigma ?? 1);

    /// <summary>Of the coefficients as reported, and of ln scale.</summary>
    public double Covariance(int k, int l) => Fit.Covariance[k, l] * (k == 0 ? Window?.Width ?? 1 : 1) * (l == 0 ? Window?.Width ?? 1 : 1);

    /// <summary>The model's quantile for rows like a group's on average, clients' effects at their middle, and its standard error.</summary>
    public (double Time, double StdError) ModelQuantile(int group, double probability)
    {
        var x = Design(group);
        var noise =
            Distribution == LifeDistribution.Weibull
                ? Math.Log(-Math.Log(1 - probability))
                : MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, probability);
        double[] slope = [.. x, noise * Scale];
        var variance = 0.0;
        for (var k = 0; k < slope.Length; k++)
        {
            for (var l = 0; l < slope.Length; l++)
                variance += slope[k] * slope[l] * Covariance(k, l);
        }
        var time = Math.Exp(x.Select((value, k) => value * Coefficient(k)).Sum() + noise * Scale);
        return (time, time * Math.Sqrt(variance));
    }

    private double[] Design(int group)
    {
        var rows = Enumerable.Range(0, Input.Spells.Length).Where(i => Input.Group is not { } groups || groups.Of[i] == group).ToList();
        var weight = rows.Sum(i => Input.Spells[i].Weight);
        return [1, .. Input.Columns.Select(column => rows.Sum(i => Input.Spells[i].Weight * column.Values[i]) / weight)];
    }

    private Spell[] SpellsOf(int group) => [.. Input.Spells.Where((_, i) => Input.Group!.Value.Of[i] == group)];

    private List<CovariateColumn> Others() => [.. Input.Columns.Where(c => Input.GroupColumns.All(g => g.Name != c.Name))];

    private LifetimeFit FitOf(IReadOnlyList<CovariateColumn> columns)
    {
        var places = Window is { } window ? Enumerable.Repeat(window.Place, Input.Spells.Length).ToArray() : [];
        var rows = LifetimeFitRows.Create(Input.Spells, columns, places, Window is null ? [] : Input.Clients);
        var priors = Window?.ToLifePriors([.. columns.Select(_ => LifePriors.UsualCoefficient)]) ?? LifePriors.Flat(columns.Count);
        return LifetimeFitter.Fit(Distribution, rows, priors);
    }
}
