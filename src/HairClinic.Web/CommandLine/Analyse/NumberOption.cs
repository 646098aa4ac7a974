using System.CommandLine;

namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>An option that is one number between two bounds, which its help names: within them the answer is right, beyond them refused.</summary>
public sealed class NumberOption
{
    private readonly double _from;
    private readonly double _to;
    private readonly double? _unlessSaid;

    public NumberOption(string name, string description, double from, double to, bool required = false, double? unlessSaid = null)
    {
        (_from, _to, _unlessSaid) = (from, to, unlessSaid);
        var usual = unlessSaid is { } number ? FormattableString.Invariant($", {number} if not said") : "";
        Option = new Option<string?>(name)
        {
            Description = FormattableString.Invariant($"{description} From {from} to {to}{usual}."),
            Required = required,
        };
    }

    public Option<string?> Option { get; }

    public bool IsSaid(ParseResult result) => result.GetValue(Option) is not null;

    /// <returns>Null where it is not said, and there is nothing that goes without saying.</returns>
    /// <exception cref="Refusal">It is no number, or lies outside its bounds.</exception>
    public double? Read(ParseResult result) => result.GetValue(Option) is { } word ? Parse(Option.Name, word, _from, _to) : _unlessSaid;

    /// <summary>Of a required option, or one that has a usual value.</summary>
    public double Number(ParseResult result) => Read(result)!.Value;

    /// <exception cref="Refusal">It is no number, or lies outside the bounds.</exception>
    public static double Parse(string option, string word, double from, double to) =>
        AnalyseOutput.ParseNumber(option, word) is var number && number >= from && number <= to
            ? number
            : throw new Refusal("{0} is {1}: it must lie between {2} and {3}.", option, word.Trim(), from, to);
}
