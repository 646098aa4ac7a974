using System.CommandLine;
using System.Text.Json;
using HairClinic.Web.CommandLine.Analyse;

namespace HairClinic.Web.Tests.CommandLine.Analyse;

/// <summary>Runs the verb on a table written for the test, as the command line would.</summary>
internal sealed record Analysis(int Code, string Output, string Errors)
{
    public JsonElement Json => JsonDocument.Parse(Output).RootElement;

    public double Number(params ReadOnlySpan<string> path)
    {
        var at = Json;
        foreach (var name in path)
            at = at.GetProperty(name);
        return at.GetDouble();
    }

    public static Analysis Of(string csv, string words)
    {
        var file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".csv");
        File.WriteAllText(file, csv);
        try
        {
            return Of(["survival", "--csv", file, .. words.Split(' ', StringSplitOptions.RemoveEmptyEntries)]);
        }
        finally
        {
            File.Delete(file);
        }
    }

    public static Analysis Of(params string[] words)
    {
        using var output = new StringWriter();
        using var errors = new StringWriter();
        var parsed = AnalyseVerb.Command().Parse(words);
        var code =
            parsed.Errors.Count > 0
                ? AnalyseOutput.WriteUsageErrors(parsed, errors)
                : parsed.Invoke(
                    new InvocationConfiguration
                    {
                        Output = output,
                        Error = errors,
                        EnableDefaultExceptionHandler = false,
                    }
                );
        return new Analysis(code, output.ToString(), errors.ToString());
    }
}
