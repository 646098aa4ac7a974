namespace HairClinic.Domain.Chairs;

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
