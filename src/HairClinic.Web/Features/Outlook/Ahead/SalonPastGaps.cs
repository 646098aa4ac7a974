namespace HairClinic.Web.Features.Outlook;

/// <summary>One salon's clients over the period.</summary>
/// <param name="SalonId">Null for several together.</param>
public sealed record SalonPastGaps(Guid? SalonId, string Name)
{
    /// <summary>Clients without a gap, of those who were watched for a day or more.</summary>
    public BinomialProportion Kept { get; init; }

    public int Gaps { get; init; }
    public int GapDays { get; init; }
    public int DaysWatched { get; init; }

    /// <summary>Whether the share of those kept tells anything.</summary>
    public bool CanTell => GapFreeRateRule.IsMeaningful(Kept.Of, DaysWatched);

    /// <summary>Clients who wear nothing for so long that they are taken to have left.</summary>
    public int Lapsed { get; init; }

    /// <summary>Worn-out units whose successor was ready in time.</summary>
    public BinomialProportion InTime { get; init; }

    internal SalonPastGaps AddClient(ClientPastGaps found, BinomialProportion inTime) =>
        this with
        {
            Kept = found.DaysWatched == 0 ? Kept : Kept + new BinomialProportion(found.Gaps.Count == 0 ? 1 : 0, 1),
            Gaps = Gaps + found.Gaps.Count,
            GapDays = GapDays + found.Gaps.Sum(b => b.Days),
            DaysWatched = DaysWatched + found.DaysWatched,
            // Of those, only whoever wore hair in the period is this period's to tell of.
            Lapsed = Lapsed + (found.HasLapsed && found.DaysWatched > 0 ? 1 : 0),
            InTime = InTime + inTime,
        };

    public static SalonPastGaps operator +(SalonPastGaps one, SalonPastGaps other) =>
        one with
        {
            Kept = one.Kept + other.Kept,
            Gaps = one.Gaps + other.Gaps,
            GapDays = one.GapDays + other.GapDays,
            DaysWatched = one.DaysWatched + other.DaysWatched,
            Lapsed = one.Lapsed + other.Lapsed,
            InTime = one.InTime + other.InTime,
        };
}

/// <summary>Days one client had no hair.</summary>
public sealed record GapRow(Guid ClientId, string Code, string Name, string Salon, RecordedGap Gap);
