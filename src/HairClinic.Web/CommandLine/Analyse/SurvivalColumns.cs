namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>Which columns of the table say what.</summary>
/// <param name="Factors">Those whose cells name kinds: every other covariate is a number.</param>
public sealed record SurvivalColumns(
    string? Time,
    string? Event,
    string? Lower,
    string? Upper,
    string? Weight,
    string? Group,
    string? Client,
    IReadOnlyList<string> Covariates,
    IReadOnlyList<string> Factors
)
{
    /// <exception cref="Refusal">It is not said where the times are, or in both ways; or a factor is no column of the model.</exception>
    public SurvivalColumns EnsureValid()
    {
        var exact = Time is not null || Event is not null;
        var within = Lower is not null || Upper is not null;
        if (exact && within)
            throw new Refusal("Say either --time and --event, or --lower and --upper.");
        if (within ? Lower is null || Upper is null : Time is null || Event is null)
            throw new Refusal("Say where the times are: --time and --event, or --lower and --upper.");
        if (Covariates.GroupBy(c => c).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new Refusal("The covariate \"{0}\" is named twice.", twice.Key);
        return this;
    }

    /// <exception cref="Refusal">A factor is no column of the table, or one that neither covariates nor groups are read from.</exception>
    public SurvivalColumns EnsureFactorsAreRead(CsvTable table)
    {
        foreach (var factor in Factors)
        {
            table.Column(factor);
            if (factor != Group && !Covariates.Contains(factor))
                throw new Refusal("--factor {0} changes nothing: {0} is neither the --group nor among the --covariates.", factor);
        }
        return this;
    }
}
