using System.CommandLine;

namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>analyse: the engines behind holds, lives and orders, on data from a file or the command line; no book is opened.</summary>
public static class AnalyseVerb
{
    public const string Name = "analyse";

    public static Command Command() =>
        new(Name, "Compute from a file what the book's screens show of holds, lives and orders.")
        {
            SurvivalVerb.Command(),
            GapRiskVerb.Command(),
            RemainingLifeVerb.Command(),
        };
}
