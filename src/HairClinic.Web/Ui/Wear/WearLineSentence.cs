namespace HairClinic.Web.Ui.Wear;

/// <summary>The wear line in words, for those who listen to it and beneath it for everyone.</summary>
public static class WearLineSentence
{
    /// <param name="forClient">Speaks to the client, and names no serial.</param>
    public static string Describe(WearLineData model, IStringLocalizer words, bool forClient)
    {
        var lines = new List<string>();
        string Day(LocalDate date) => Dates.Day(date, model.Today);
        string Name(WearLineUnit lane) => forClient ? lane.Kind : $"{lane.Serial} ({lane.Kind})";

        if (model.Worn is { Open: { } bond } worn)
        {
            lines.Add(words["{0} has been on the head since {1}.", Name(worn), Day(bond.AppliedOn)]);
            lines.Add(State(bond, model.Today, words, Day));
            if (worn.Band is { } band)
                lines.Add(words["It will most likely wear out between {0} and {1}.", Day(band.Early), Day(band.Late)]);
            if (worn.ReorderBy is { } reorder)
                lines.Add(words["The next one is to be ordered by {0}.", Day(reorder)]);
        }
        else
        {
            lines.Add(words["Nothing is bonded today."]);
        }

        foreach (var lane in model.Lanes.Where(lane => lane != model.Worn && lane.Retired is null))
            if (Waiting(lane, words, Name, Day) is { } waiting)
                lines.Add(waiting);

        if (model.Gap is { } gap)
            lines.Add(
                gap switch
                {
                    { WithoutHair: true, Days: 1 } => words["If nothing is done, there will be one day without hair, {0}.", Day(gap.From)],
                    { WithoutHair: true } => words[
                        "If nothing is done, there will be {0} days without hair, from {1}.",
                        gap.Days,
                        Day(gap.From)
                    ],
                    { Days: 1 } => words["If nothing is done, no unit still wears well on {0}.", Day(gap.From)],
                    _ => words["If nothing is done, no unit still wears well from {0} on, for {1} days.", Day(gap.From), gap.Days],
                }
            );

        var bonds = model.Lanes.Sum(lane => lane.Bonds.Count);
        var lifted = model.Lanes.SelectMany(lane => lane.Bonds).Count(bond => bond.LiftedOn is not null);
        if (bonds > 1)
            lines.Add(words["{0} bonds are drawn; {1} of them lifted.", bonds, lifted]);
        return string.Join(' ', lines);
    }

    private static string State(WearLineBond bond, LocalDate today, IStringLocalizer words, Func<LocalDate, string> day) =>
        bond switch
        {
            { LiftedOn: { } lifted } => words["It lifted on {0}.", day(lifted)],
            _ when today > bond.Closes => words["Its window closed on {0}: the rebond is overdue.", day(bond.Closes)],
            _ => words["Its rebond is due {0}; the window is {1} to {2}.", day(bond.DueOn), day(bond.Opens), day(bond.Closes)],
        };

    private static string? Waiting(
        WearLineUnit lane,
        IStringLocalizer words,
        Func<WearLineUnit, string> name,
        Func<LocalDate, string> day
    ) =>
        lane switch
        {
            { Arrived: { } arrived } => words["{0} has been at hand since {1}.", name(lane), day(arrived)].Value,
            { PromisedFrom: { } from, PromisedTo: { } to } when from == to => words[
                "{0} is on order, promised for {1}.",
                name(lane),
                day(from)
            ].Value,
            { PromisedFrom: { } from, PromisedTo: { } to } => words[
                "{0} is on order, expected between {1} and {2}.",
                name(lane),
                day(from),
                day(to)
            ].Value,
            { Ordered: { } ordered } => words["{0} has been on order since {1}.", name(lane), day(ordered)].Value,
            _ => null,
        };
}
