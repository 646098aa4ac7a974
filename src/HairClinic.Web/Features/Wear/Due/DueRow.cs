namespace HairClinic.Web.Features.Wear;

/// <summary>One client on the list: the bond on their head, and what the desk knows about reaching them.</summary>
public sealed record DueRow
{
    public required Guid BondId { get; init; }
    public required int Rank { get; init; }
    public required Guid ClientId { get; init; }
    public required Guid SalonId { get; init; }
    public required string Code { get; init; }
    public required string Name { get; init; }
    public string? CalledAs { get; init; }
    public string? Phone { get; init; }
    public required LocalDate AppliedOn { get; init; }
    public required LocalDate OpensOn { get; init; }
    public required LocalDate DueOn { get; init; }
    public required LocalDate ClosesOn { get; init; }
    public required IReadOnlyList<DueReason> Reasons { get; init; }

    /// <summary>The bond comes off and none is made.</summary>
    public bool IsTakeDown => Reasons.AskForTakeDown();

    public LocalDate? LiftedOn { get; init; }
    public LocalDate? LiftReportedOn { get; init; }
    public LiftZone? LiftZone { get; init; }
    public LastContact? LastContact { get; init; }
    public DueBooking? Booking { get; init; }

    /// <summary>No spare in house, and nothing on order.</summary>
    public required bool AtRisk { get; init; }

    /// <summary>Not at risk by the chance of a gap, but the spare that is always kept is neither in house nor on order.</summary>
    public bool SpareMissing { get; init; }

    public DueCursor Cursor => new(Rank, ClosesOn, BondId);
}

/// <summary>The last thing the desk did about them.</summary>
public sealed record LastContact(ContactOutcome Kind, Instant At, LocalDate? Until, string? Reason);

/// <summary>The visit that will renew the bond.</summary>
public sealed record DueBooking(Guid VisitId, Guid SalonId, Instant At, LocalDate Day);
