namespace HairClinic.Web.Features.Lasting;

/// <summary>The tables of the page.</summary>
public enum LastingTableKind
{
    Groups,
    Watched,
    Effects,
    Costs,
}

/// <summary>The tables as sheets. Numbers are whole precision and stand there whether or not the page calls them certain; "certain" says which.</summary>
internal static class LastingCsv
{
    public static LastingTableKind? ParseTableName(LastingQuery question, string? table)
    {
        if (string.IsNullOrEmpty(table))
            return question.Of == LastingSubject.Cost ? LastingTableKind.Costs : LastingTableKind.Groups;
        foreach (var known in Enum.GetValues<LastingTableKind>())
        {
            if (LastingQuery.EnumToQueryValue(known) == table && known == LastingTableKind.Costs == (question.Of == LastingSubject.Cost))
                return known;
        }
        return null;
    }

    public static string[] Headings(LastingTableKind table) =>
        table switch
        {
            LastingTableKind.Groups => ["group", "spells", "ended", "censored", "half_by_day", "low", "high", "estimate", "certain"],
            LastingTableKind.Watched => ["group", "day", "watched", "share_going_on", "low", "high"],
            LastingTableKind.Effects => ["name", "factor", "low_80", "high_80"],
            _ =>
            [
                "name",
                "currency",
                "units_priced",
                "units_worn",
                "units_worn_out",
                "unit_price_minor",
                "worn_months",
                "rebonds_a_month",
                "rebond_price_minor",
                "unit_a_month_minor",
                "rebonds_a_month_minor",
                "month_minor",
                "low_80_minor",
                "high_80_minor",
                "certain",
            ],
        };

    public static IEnumerable<IReadOnlyList<string>> Rows(WhatLasts.Screen screen, LastingTableKind table) =>
        table switch
        {
            LastingTableKind.Groups => screen.Groups.Select(Of),
            LastingTableKind.Watched => screen.Groups.SelectMany(g => screen.Days.Select((day, i) => Of(g, day, g.AtRisk[i]))),
            LastingTableKind.Effects => screen.Fit.Effects.Select(
                IReadOnlyList<string> (e) => [e.Name, Number(e.Factor), Number(e.Low), Number(e.High)]
            ),
            _ => screen.Costs.Select(Of),
        };

    private static IReadOnlyList<string> Of(LastingGroup group) =>
        [
            group.Name ?? "",
            Number(group.Spells),
            Number(group.Ended),
            Number(group.Censored),
            Number(group.Curve.Median),
            Number(group.Curve.Low),
            Number(group.Curve.High),
            group.Curve.ByIntervals ? "turnbull" : "kaplan-meier",
            group.CanTell ? "yes" : "no",
        ];

    private static IReadOnlyList<string> Of(LastingGroup group, double day, int watched)
    {
        var at = group.Curve.At(day);
        return [group.Name ?? "", Number(day), Number(watched), Number(at?.Share), Number(at?.Low), Number(at?.High)];
    }

    private static IReadOnlyList<string> Of(WearCostRow cost) =>
        [
            cost.Name,
            cost.Currency,
            Number(cost.Priced),
            Number(cost.Worn),
            Number(cost.Ended),
            Number(cost.UnitPrice),
            Number(cost.Cost.WornMonths),
            Number(cost.Cost.RebondsAMonth),
            Number(cost.VisitPrice),
            Number(cost.Cost.Unit),
            Number(cost.Cost.Visits),
            Number(cost.Cost.Month),
            Number(cost.Cost.Low),
            Number(cost.Cost.High),
            cost.CanTell ? "yes" : "no",
        ];

    private static string Number(double? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "";
}
