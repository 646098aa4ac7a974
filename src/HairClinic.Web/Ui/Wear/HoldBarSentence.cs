namespace HairClinic.Web.Ui.Wear;

/// <summary>A hold bar in words.</summary>
public static class HoldBarSentence
{
    public static string Describe(WearLineBond bond, LocalDate today, IStringLocalizer words)
    {
        string Day(LocalDate date) => Dates.Day(date, today);
        var held = words["Day {0} since {1}.", Period.DaysBetween(bond.AppliedOn, bond.LiftedOn ?? today), Day(bond.AppliedOn)];
        string state = bond switch
        {
            { LiftedOn: { } lifted } => words["Lifted {0}.", Day(lifted)],
            _ when today > bond.Closes => words[
                "Window closed {0}, {1} days over.",
                Day(bond.Closes),
                Period.DaysBetween(bond.Closes, today)
            ],
            _ when today >= bond.Opens => words["Window open until {0}, due {1}.", Day(bond.Closes), Day(bond.DueOn)],
            _ => words["Window opens {0}, due {1}.", Day(bond.Opens), Day(bond.DueOn)],
        };
        return $"{held} {state}";
    }
}
