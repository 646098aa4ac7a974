namespace HairClinic.Domain.Chairs;

/// <summary>What a step of a service takes up.</summary>
public enum SegmentKind
{
    /// <summary>The chair and a stylist's hands.</summary>
    HandsOn,

    /// <summary>The chair alone: a coat drying.</summary>
    Wait,

    /// <summary>Neither.</summary>
    ChairFree,
}
