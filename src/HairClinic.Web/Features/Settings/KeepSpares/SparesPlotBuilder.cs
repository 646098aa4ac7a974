using HairClinic.Web.Ui.Plots;

namespace HairClinic.Web.Features.Settings;

/// <summary>For one client of a kind: units lying ready against days without hair a year, along the chance of a gap, with one and two spares.</summary>
public static class SparesPlotBuilder
{
    public static PlotData BuildPlotData(KeepSpares.KindRow kind, IStringLocalizer words)
    {
        // Rules that come to the same stand on one place, under one word.
        var dots = Enumerable
            .Range(0, kind.Costs.WithSpares.Count + 1)
            .Select(spares => (Option: kind.Costs[spares], Word: Short(kind.Costs[spares], words), IsNow: spares == kind.Spares))
            .GroupBy(d => (d.Option.IdleUnits, d.Option.DaysWithoutPerYear))
            .Select(g => new PlotDot(
                g.Key.IdleUnits,
                g.Key.DaysWithoutPerYear,
                string.Join(", ", g.Select(d => d.Word)),
                g.Any(d => d.IsNow)
            ));
        return new PlotData(words["Units lying ready, for one client"], words["Days without hair a year"], "0.#")
        {
            Lines =
            [
                new PlotSeries(
                    words["By the chance of a gap"],
                    [.. kind.Costs.Curve.OrderBy(o => o.IdleUnits).Select(o => new PlotPoint(o.IdleUnits, o.DaysWithoutPerYear))]
                ),
            ],
            Dots = [.. dots],
            Leftmost = 0,
        };
    }

    /// <summary>What can be seen, in one sentence.</summary>
    public static string Describe(KeepSpares.KindRow kind, IStringLocalizer words) =>
        words[
            "{0}: the more units lie ready for each client, the fewer days without hair a year: {1} with a chance of {2}, {3} with one spare, {4} with two.",
            kind.Name,
            SparesText.Number(kind.Costs.ByChance.DaysWithoutPerYear, 1, words),
            SparesText.Percent(kind.Costs.ByChance.Alpha),
            SparesText.Number(kind.Costs[1].DaysWithoutPerYear, 1, words),
            SparesText.Number(kind.Costs[2].DaysWithoutPerYear, 1, words)
        ];

    /// <summary>All that the picture shows.</summary>
    public static IEnumerable<(string Rule, CertaintyOption Option)> Rules(KeepSpares.KindRow kind, IStringLocalizer words) =>
        [
            .. kind.Costs.Curve.Select(o =>
                (
                    o.Alpha == kind.Costs.ByChance.Alpha
                        ? words["Chance of a gap {0}, as accepted", SparesText.Percent(o.Alpha)].Value
                        : words["Chance of a gap {0}", SparesText.Percent(o.Alpha)].Value,
                    o
                )
            ),
            .. kind.Costs.WithSpares.Select(o => (SparesText.Rule(o.Spares, words), o)),
        ];

    private static string Short(CertaintyOption option, IStringLocalizer words) =>
        option.Spares switch
        {
            0 => words["chance {0}", SparesText.Percent(option.Alpha)],
            1 => words["one"],
            _ => words["two"],
        };
}
