namespace HairClinic.Domain.Chairs;

/// <summary>
/// What a stretch of a service keeps busy: the one definition that both the search for free times and the rows go by,
/// over whose overlaps the database decides.
/// </summary>
public static class SegmentOccupancy
{
    public static bool TakesChair(this SegmentKind kind) => kind != SegmentKind.ChairFree;

    /// <param name="length">How long the stretch is.</param>
    /// <param name="shortestUsableWait">A wait of less is too short to begin with a second client: the stylist stays.</param>
    public static bool TakesHands(this SegmentKind kind, Duration length, Duration shortestUsableWait) =>
        kind == SegmentKind.HandsOn || length < shortestUsableWait;
}

/// <summary>What one stretch of a service keeps busy.</summary>
public enum SegmentKind
{
    /// <summary>The chair and the stylist.</summary>
    HandsOn,

    /// <summary>The chair only: a coat dries.</summary>
    Wait,

    /// <summary>Neither: the client waits elsewhere.</summary>
    ChairFree,
}
