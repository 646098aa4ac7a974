using HairClinic.Web.Ui;
using HairClinic.Web.Ui.Plots;

namespace HairClinic.Web.Features.Clients;

/// <summary>The chance of a gap against the day of the order, with today, the last day to order and what is on order marked.</summary>
public static class NextUnitPlotBuilder
{
    public static PlotData BuildPlotData(NextUnit.Plan plan, IStringLocalizer words)
    {
        var today = plan.Outlook.Today;
        var marks = new List<PlotMark> { new(0, words["today"]) };
        if (plan.Outlook.OrderBy is { } day && Period.DaysBetween(today, day) is > 0 and var days && days < plan.Curve.Count)
            marks.Add(new PlotMark(days, words["order by {0}", Dates.Day(day, today)]));
        foreach (var coming in plan.InFlight)
        {
            if (Period.DaysBetween(today, coming.Late) is var late && late < plan.Curve.Count)
                marks.Add(new PlotMark(late, words["{0} likely here by {1}", coming.Serial, Dates.Day(coming.Late, today)]));
        }
        return new PlotData(words["Day of the order"], words["Chance that no unit still wears well"], "0%")
        {
            Lines =
            [
                new PlotSeries(words["Ordered on that day"], [.. plan.Curve.Select((chance, i) => new PlotPoint(i, chance))]),
                new PlotSeries(
                    words["Accepted"],
                    [new PlotPoint(0, plan.Outlook.Alpha), new PlotPoint(plan.Curve.Count - 1, plan.Outlook.Alpha)]
                ),
            ],
            Marks = marks,
            XWords = x => Dates.Day(today.PlusDays((int)x), today),
            Highest = Math.Max(0.2, Math.Min(1, 1.05 * plan.Curve.Max())),
        };
    }
}
