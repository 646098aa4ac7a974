namespace HairClinic.Domain.Wear;

/// <summary>The look-over a week after a client's first fitting.</summary>
public static class FirstFittingFollowUpRule
{
    public const int DaysAfterFirstFitting = 7;
    public const int ReachDays = 3;

    /// <summary>Seven days on, or the nearest open day up to three days off; that very day if all are closed.</summary>
    public static LocalDate DueOn(LocalDate firstFittedOn, OpeningDays opening)
    {
        var wanted = firstFittedOn.PlusDays(DaysAfterFirstFitting);
        return opening.Nearest(wanted, wanted.PlusDays(-ReachDays), wanted.PlusDays(ReachDays)) ?? wanted;
    }
}
