using HairClinic.Domain.Practices;

namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>Which columns of the table say what.</summary>
public sealed record SurvivalColumns(
    string? Time,
    string? Event,
    string? Lower,
    string? Upper,
    string? Weight,
    string? Group,
    string? Client,
    IReadOnlyList<string> Covariates
)
{
    /// <exception cref="Refusal">It is not said where the times are, or in both ways.</exception>
    public SurvivalColumns Checked()
    {
        var exact = Time is not null || Event is not null;
        var within = Lower is not null || Upper is not null;
        if (exact && within)
            throw new Refusal("Say either --time and --event, or --lower and --upper.");
        if (within ? Lower is null || Upper is null : Time is null || Event is null)
            throw new Refusal("Say where the times are: --time and --event, or --lower and --upper.");
        var twice = Covariates.GroupBy(c => c).FirstOrDefault(g => g.Count() > 1);
        return twice is null ? this : throw new Refusal("The covariate \"{0}\" is named twice.", twice.Key);
    }
}
