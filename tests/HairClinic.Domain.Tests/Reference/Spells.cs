using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Tests.Reference;

/// <summary>Published data as spells.</summary>
public static class Spells
{
    public static Table Nist { get; } = Table.Read("nist_weibull_500h.csv");

    public static Table Leukaemia { get; } = Table.Read("leukaemia_6mp.csv");

    public static Table Ovarian { get; } = Table.Read("ovarian.csv");

    public static Spell[] OfNist { get; } = Of(Nist, "time", "status");

    public static Spell[] OfLeukaemia { get; } = Of(Leukaemia, "time", "cens");

    public static Spell[] OfOvarian { get; } = Of(Ovarian, "futime", "fustat");

    /// <summary>Each relapse known only to the week before it, left-censored in the first.</summary>
    public static Spell[] OfLeukaemiaByWeek { get; } =
    [.. OfLeukaemia.Select(spell => spell.End == SpellEnd.At ? Spell.FromBounds(spell.Lower - 1, spell.Lower) : spell)];

    /// <summary>1 for the drug, 0 for the control.</summary>
    public static double[] Drug { get; } = [.. Leukaemia.Texts("treat").Select(t => t == "6-MP" ? 1.0 : 0)];

    private static Spell[] Of(Table table, string time, string ended) =>
        [
            .. table.Rows.Select(row =>
                table.Number(row, ended) == 1 ? Spell.Exact(table.Number(row, time)) : Spell.RightCensored(table.Number(row, time))
            ),
        ];
}
