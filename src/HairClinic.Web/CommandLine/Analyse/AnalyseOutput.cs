using System.CommandLine;
using System.Text.Encodings.Web;
using System.Text.Json.Nodes;

namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>One JSON document on the way out, or one sentence on the way of errors.</summary>
public static class AnalyseOutput
{
    private static readonly JsonSerializerOptions Spaced = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <returns>0, or 2 when what was asked or the file was refused: then nothing was written but the refusal.</returns>
    public static int RunAndWrite(InvocationConfiguration ways, Func<JsonObject> analyse)
    {
        try
        {
            var document = analyse();
            ways.Output.WriteLine(document.ToJsonString(Spaced));
            return 0;
        }
        catch (Refusal refusal)
        {
            // A cell may hold line ends: a refusal is one line.
            ways.Error.WriteLine(string.Concat(refusal.Message.Select(c => char.IsControl(c) ? ' ' : c)));
            return 2;
        }
    }

    /// <summary>What was asked is not understood: one line, and no help where a document is expected.</summary>
    public static int WriteUsageErrors(ParseResult parsed, TextWriter errors)
    {
        var words = parsed.Errors.SelectMany(e => e.Message.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        errors.WriteLine(string.Join(' ', words));
        return 2;
    }

    /// <exception cref="Refusal">It is no number.</exception>
    public static double ParseNumber(string option, string word) =>
        NumberWord.TryParse(word.Trim(), out var number, out var why)
            ? number
            : throw new Refusal("{0} is \"{1}\", which is {2}.", option, word, why);
}
