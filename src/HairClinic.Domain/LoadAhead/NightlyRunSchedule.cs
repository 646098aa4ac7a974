namespace HairClinic.Domain.LoadAhead;

/// <summary>When the run of a night is asked for.</summary>
public static class NightlyRunSchedule
{
    /// <summary>How often it is tried in one night.</summary>
    public const int MostTries = 4;

    /// <summary>At two o'clock, where the practice has its first salon.</summary>
    public static readonly LocalTime Begins = new(2, 0);

    private static readonly Duration FirstPause = Duration.FromMinutes(10);

    /// <summary>When the night began to which a moment belongs; by day that is the last night.</summary>
    public static Instant StartOfNight(Instant now, DateTimeZone zone)
    {
        var local = now.InZone(zone);
        var night = local.TimeOfDay >= Begins ? local.Date : local.Date.PlusDays(-1);
        return night.At(Begins).InZoneLeniently(zone).ToInstant();
    }

    /// <summary>
    /// Whether to ask for a run now: where there was none since the night began; and where all there were failed, again after 10, 20 and
    /// 40 minutes. By day too: a night that failed while the machine was off is made up for.
    /// </summary>
    /// <param name="sinceThen">All runs asked for since the night began, by whomever, and any that still goes on.</param>
    public static bool IsDue(IReadOnlyCollection<Recalculation> sinceThen, Instant now)
    {
        if (sinceThen.Count == 0)
            return true;
        if (sinceThen.Count >= MostTries || sinceThen.Any(r => r.State != RecalculationState.Failed || r.EndedAt is null))
            return false;
        return now >= sinceThen.Max(r => r.EndedAt!.Value) + FirstPause * (1 << (sinceThen.Count - 1));
    }
}
