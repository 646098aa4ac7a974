using HairClinic.Web.Ui;
using HairClinic.Web.Ui.Wear;

namespace HairClinic.Web.Features.Clients;

/// <summary>How things stand, in sentences that can be read aloud: what was lost, what is late, how long hair lasts, what to do first.</summary>
public static class NextUnitSentences
{
    public static IReadOnlyList<string> All(NextUnit.Screen screen, IStringLocalizer words)
    {
        var name = screen.Client.CalledAs ?? screen.Client.Name;
        if (screen.Client.LeftOn is { } left)
            return [words["They have needed no units since {0}.", Dates.Day(left, screen.Today)]];
        if (screen.Plan is not { } plan)
            return [words["{0} wears no unit of ours now, so there is nothing to work out.", name]];
        return
        [
            .. plan.GoneLately.Select(gone => Gone(gone, screen.Today, words)),
            .. Bond(screen, name, words),
            Hair(plan, name, screen.Today, words),
            .. plan.InFlight.Select(coming => Coming(coming, plan, screen.Today, words)),
            .. plan.MayBeForgotten.Select(unit => Forgotten(unit, screen.Today, words)),
            Chance(plan, words),
            First(plan, words),
        ];
    }

    private static string Gone(NextUnit.UnitGone gone, LocalDate today, IStringLocalizer words) =>
        gone.State == UnitState.Lost
            ? words["Unit {0} was lost on {1}.", gone.Serial, Dates.Day(gone.On, today)]
            : words["Unit {0} was damaged on {1} and is gone.", gone.Serial, Dates.Day(gone.On, today)];

    private static IEnumerable<string> Bond(NextUnit.Screen screen, string name, IStringLocalizer words)
    {
        if (screen.Bond?.Lift is { } lift)
        {
            var when = Dates.Day(lift.UpBy, screen.Today);
            yield return screen.NextVisit is { } visit
                ? words["{0}’s bond lifted on {1}; a visit is booked for {2}.", name, when, Dates.Day(visit, screen.Today)]
                : words["{0}’s bond lifted on {1}, and no visit is booked: book one first.", name, when];
        }
    }

    private static string Hair(NextUnit.Plan plan, string name, LocalDate today, IStringLocalizer words) =>
        plan switch
        {
            { InHand.Count: 0 } => words["{0} has no unit left that still wears well.", name],
            { Outlook.HairEndDates: null } => words["The units in house last longer than can be told from here."],
            { InHand: [var one], Outlook.HairEndDates: { } ends } => words[
                "Unit {0} will most likely be worn out between {1} and {2}; there is no other in house.",
                one.Serial,
                Dates.Day(ends.Early, today),
                Dates.Day(ends.Late, today)
            ],
            { Outlook.HairEndDates: { } ends } => words[
                "The {0} units in house will most likely be worn out between {1} and {2}.",
                plan.InHand.Count,
                Dates.Day(ends.Early, today),
                Dates.Day(ends.Late, today)
            ],
        };

    private static string Coming(NextUnit.UnitComing coming, NextUnit.Plan plan, LocalDate today, IStringLocalizer words)
    {
        var workshop = coming.Workshop ?? words["the workshop"];
        var likely = words[
            "It will most likely be here between {0} and {1}, and ready to bond {2} days later.",
            Dates.Day(coming.Early, today),
            Dates.Day(coming.Late, today),
            plan.Preparation.HalfDays
        ];
        var promise = coming.FirstPromise switch
        {
            null => words["Unit {0} is on order from {1}; no day was promised.", coming.Serial, workshop],
            { } first when first < today && coming.Promise > first => words[
                "Unit {0} from {1} was first promised for {2} and is now promised for {3}.",
                coming.Serial,
                workshop,
                Dates.Day(first, today),
                Dates.Day(coming.Promise.Value, today)
            ],
            { } first when first < today => words[
                "Unit {0} from {1} was promised for {2} and is {3} days late.",
                coming.Serial,
                workshop,
                Dates.Day(first, today),
                Period.DaysBetween(first, today)
            ],
            { } first when coming.Promise > first => words[
                "Unit {0} from {1} was promised for {2}, now for {3}.",
                coming.Serial,
                workshop,
                Dates.Day(first, today),
                Dates.Day(coming.Promise.Value, today)
            ],
            { } first => words["Unit {0} is on order from {1}, promised for {2}.", coming.Serial, workshop, Dates.Day(first, today)],
        };
        return $"{promise} {likely}";
    }

    private static string Forgotten(NextUnit.UnitForgotten unit, LocalDate today, IStringLocalizer words) =>
        words[
            "Unit {0} has been on order for {1} days, far longer than usual: it is not counted on until somebody says that it is still on its way.",
            unit.Serial,
            Period.DaysBetween(unit.OrderedOn, today)
        ];

    private static string Chance(NextUnit.Plan plan, IStringLocalizer words)
    {
        var standing = plan.Outlook.Standing;
        // Which order may be forgotten has a sentence of its own here.
        var why = NextUnitText.Why(standing with { Warnings = standing.Warnings with { ForgottenSince = null } }, words);
        if (standing.AtRisk)
        {
            var days = Math.Max(1, (int)Math.Round(plan.Outlook.ExpectedDaysWithoutHair));
            return $"{why} {words["On average it comes to {0} such days.", days]}";
        }
        if (standing.Verdict == ReorderVerdict.SpareMissing)
            return $"{why} {words["By the chance of a gap alone there would be time until {0}.", Dates.Day(standing.OrderBy!.Value, standing.Today)]}";
        if (plan.Outlook.Answer.IsPastSight)
            return words[
                "There is no need to order before {0}; farther ahead is not worked out.",
                Dates.Day(standing.OrderBy!.Value, standing.Today)
            ];
        return standing.InFlight > 0
            ? why
            : $"{words["The last day to order is {0}.", Dates.Day(standing.OrderBy!.Value, standing.Today)]} {why}";
    }

    private static string First(NextUnit.Plan plan, IStringLocalizer words)
    {
        var standing = plan.Outlook.Standing;
        return plan.Remedies.FirstOrDefault(r => r is not { Kind: RemedyKind.OffTheShelf, Stock.Count: 0 }) is { } remedy
                ? words["First: {0}", RemedyText.Of(remedy, words)]
            : standing.OrderBy is null || standing.OrderBy == standing.Today ? words["First: order the next unit today."]
            : standing.Verdict == ReorderVerdict.SpareMissing ? words["First: order a spare."]
            : standing.IsToDo
                ? words["First: order the next unit, by {0} at the latest.", Dates.Day(standing.OrderBy.Value, standing.Today)]
            : words["There is nothing to do today."];
    }
}

/// <summary>A remedy in a sentence.</summary>
public static class RemedyText
{
    public static string Of(RemedyEffect remedy, IStringLocalizer words) =>
        remedy switch
        {
            { Kind: RemedyKind.Spare, What: { } unit } => words["put the spare on, {0}.", unit],
            { Kind: RemedyKind.WornSpare, What: { } unit } => words["keep {0} ready: it is worn, and good for an emergency only.", unit],
            { Kind: RemedyKind.OffTheShelf, Stock: { Count: > 0 } stock } => words[
                "offer a ready-made unit off the shelf. The chance of a gap is then: {0}.",
                string.Join(", ", stock.Select(s => $"{s.Serial} ({s.Kind}) {NextUnitText.Percent(s.Then)}"))
            ],
            { Kind: RemedyKind.OffTheShelf, Then: { } then } => words[
                "no ready-made unit is on the shelf; with one, the chance of a gap would be {0}.",
                NextUnitText.Percent(then)
            ],
            { Kind: RemedyKind.Repair, Days: { } days } => words["a repair that buys {0} days would be enough.", days],
            { Kind: RemedyKind.Repair } => words["a repair buys days, but not enough by itself."],
            { Kind: RemedyKind.Rush, Days: { } days, Then: { } then } => words[
                "ask for a rushed order: were half of them here in {0} days, the chance of a gap would be {1}. That is a hope, not a date.",
                days,
                NextUnitText.Percent(then)
            ],
            _ => words["ask the workshop about {0}: what it says is a hope, not a date.", remedy.What ?? ""],
        };
}
