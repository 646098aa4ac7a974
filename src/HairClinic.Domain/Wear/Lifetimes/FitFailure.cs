namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>Why a likelihood without priors has no highest point, in plain sentences.</summary>
internal static class FitFailure
{
    public static FitNote NoRows { get; } = new("There is no estimate: no row tells anything.");

    public static FitNote NothingEnded { get; } = new("There is no estimate: nothing has ended, so times could be as long as one likes.");

    public static FitNote EverythingEndedEarlier { get; } =
        new("There is no estimate: nothing is known to have gone on to any time, so times could be as short as one likes.");

    public static FitNote NoSpread { get; } =
        new("There is no estimate: the rows fit perfectly, so their spread could be as small as one likes.");

    public static FitNote NotReached { get; } = new("There is no estimate: the search for it did not settle.");

    public static FitNote Entangled(string covariate) =>
        new("There is no estimate: {0} is the same on every row, or follows from the other covariates.", covariate);

    public static FitNote Separated(string parameter) =>
        new("There is no estimate: the rows leave {0} without bound, because among those it tells apart nothing ended.", parameter);
}
