using System.Collections.Immutable;

namespace HairClinic.Domain.Chairs;

/// <summary>What a free slot is looked for: one service, one salon, a window of time and some wishes.</summary>
public sealed record SlotQuery
{
    public static readonly Duration UsualStep = Duration.FromMinutes(15);

    public static readonly Duration UsualNearEnough = Duration.FromHours(2);

    public required ServiceTimeline Service { get; init; }

    /// <summary>The visit starts at or after this.</summary>
    public required Instant From { get; init; }

    /// <summary>The visit is over by then.</summary>
    public required Instant To { get; init; }

    /// <summary>The start wished for; it need not be inside the window.</summary>
    public required Instant Target { get; init; }

    /// <summary>When the salon is open; a visit lies inside one stretch. Bounded, in any order.</summary>
    public required IReadOnlyList<Interval> Open { get; init; }

    public required IReadOnlyList<ChairBusyTimes> Chairs { get; init; }

    /// <summary>One person does every hands-on stretch of the visit.</summary>
    public required IReadOnlyList<PersonSchedule> People { get; init; }

    /// <summary>When the client has other visits. Bounded, half-open, in any order.</summary>
    public IReadOnlyList<Interval> ClientBusy { get; init; } = [];

    public ImmutableArray<Guid> SkillsNeeded { get; init; } = [];
    public Guid? PreferredPerson { get; init; }

    /// <summary>How many slots to return, each with another start.</summary>
    public int Best { get; init; } = 5;

    /// <summary>Starts lie this far apart, counted from the moment the salon opens.</summary>
    public Duration Step { get; init; } = UsualStep;

    /// <summary>
    /// Distances to the target are compared in steps of this length, so that a few minutes do not outweigh the
    /// client's own stylist; zero compares them exactly, for a client who names a time.
    /// </summary>
    public Duration NearEnough { get; init; } = UsualNearEnough;
}
