using System.Collections.Immutable;
using NodaTime;

namespace HairClinic.Domain.Wear;

/// <summary>Everything a rebond's due date depends on.</summary>
/// <param name="AppliedOn">The civil day, in the salon's zone, on which the bond was made.</param>
/// <param name="Window">The practice's hold window for this base, adhesive and attachment.</param>
/// <param name="TargetDays">
/// Days after application to aim at, at least 1: <see cref="HoldPrior.TargetDays"/>, or what <see cref="Learnt"/> says.
/// </param>
/// <param name="Opening">The days the client's salon is open.</param>
public readonly record struct DueQuestion(LocalDate AppliedOn, HoldWindow Window, int TargetDays, OpeningDays Opening)
{
    /// <summary>Weekdays the client likes to come; empty when any will do.</summary>
    public WeekdaySet PreferredWeekdays { get; init; }

    public Cure Cure { get; init; }

    /// <summary>Where the target comes from the practice's records; its days are the target's.</summary>
    public LearntTarget? Learnt { get; init; }

    /// <summary>Dates to be ready for and days away, in any order. Past ones and those far off do no harm.</summary>
    public ImmutableArray<ClientEvent> Events { get; init; }
}
