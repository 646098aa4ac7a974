namespace HairClinic.Web.Features.Clients;

public sealed partial class MergeClients
{
    /// <param name="CodeUnknown">A code was named that leads to nobody one may see.</param>
    /// <param name="Zone">The home salon's, for the times of past merges.</param>
    public sealed record Screen(Side Here, IReadOnlyList<Candidate> Candidates, bool CodeUnknown, IReadOnlyList<Past> Past, string Zone);

    /// <param name="Because">Null for one that was named by its code.</param>
    public sealed record Candidate(Side Side, DuplicateSearch.Duplicate? Because);

    public sealed record Side
    {
        public required Guid Id { get; init; }
        public required string Code { get; init; }
        public required string Name { get; init; }
        public string? Phone { get; init; }
        public string? Email { get; init; }
        public LocalDate? BirthDate { get; init; }
        public string? Note { get; init; }
        public required string Salon { get; init; }
        public required string Zone { get; init; }
        public int Units { get; init; }
        public int Bonds { get; init; }
        public int Visits { get; init; }
        public LocalDate? LastVisit { get; init; }

        /// <summary>Something is on the head today.</summary>
        public bool Wears { get; init; }
    }

    /// <summary>A record that was folded into this one.</summary>
    public sealed record Past(Guid MergeId, string Code, string Name, string? Phone, Instant At, string? By);

    public sealed record Input(Guid KeptId, Guid FoldedId);

    /// <param name="Moved">How many rows changed hands.</param>
    public sealed record Outcome(Guid KeptId, int Moved)
    {
        /// <summary>Visits at the same time: both are kept, and somebody has to move or call off one of each two.</summary>
        public IReadOnlyList<Twice> Twice { get; init; } = [];
    }

    /// <param name="Aside">The one that came from the folded record.</param>
    public sealed record Twice(Booked Kept, Booked Aside);

    public sealed record Booked(Guid VisitId, Instant StartsAt, Instant EndsAt, string Salon, string Zone);
}
