using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Web.Features.Outlook;

/// <summary>One salon's clients over the period.</summary>
/// <param name="SalonId">Null for several together.</param>
public sealed record SalonPromise(Guid? SalonId, string Name)
{
    /// <summary>Clients without a gap, of those who were watched for a day or more.</summary>
    public Proportion Kept { get; init; }

    public int Gaps { get; init; }

    public int BareDays { get; init; }

    public int DaysWatched { get; init; }

    /// <summary>Whether the share of those kept tells anything.</summary>
    public bool CanTell => PromiseRate.CanBeTold(Kept.Of, DaysWatched);

    /// <summary>Clients who wear nothing for so long that they are taken to have left.</summary>
    public int Lapsed { get; init; }

    /// <summary>Worn-out units whose successor was ready in time.</summary>
    public Proportion InTime { get; init; }

    internal SalonPromise With(ClientGaps watch, Proportion inTime) =>
        this with
        {
            Kept = watch.DaysWatched == 0 ? Kept : Kept + new Proportion(watch.Gaps.Count == 0 ? 1 : 0, 1),
            Gaps = Gaps + watch.Gaps.Count,
            BareDays = BareDays + watch.Gaps.Sum(b => b.Days),
            DaysWatched = DaysWatched + watch.DaysWatched,
            // Of those, only whoever wore hair in the period is this period's to tell of.
            Lapsed = Lapsed + (watch.HasLapsed && watch.DaysWatched > 0 ? 1 : 0),
            InTime = InTime + inTime,
        };

    public static SalonPromise operator +(SalonPromise one, SalonPromise other) =>
        one with
        {
            Kept = one.Kept + other.Kept,
            Gaps = one.Gaps + other.Gaps,
            BareDays = one.BareDays + other.BareDays,
            DaysWatched = one.DaysWatched + other.DaysWatched,
            Lapsed = one.Lapsed + other.Lapsed,
            InTime = one.InTime + other.InTime,
        };
}

/// <summary>Days one client had no hair.</summary>
public sealed record GapRow(Guid ClientId, string Code, string Name, string Salon, Gap Gap);
