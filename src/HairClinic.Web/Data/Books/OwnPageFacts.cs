namespace HairClinic.Web.Data.Books;

/// <summary>What a client's first page shows, as the one query brings it.</summary>
/// <param name="Zone">The home salon's.</param>
public sealed record OwnPageFacts(string Name, string Salon, string? Phone, string Zone, int CureHours, int MoveHours)
{
    public OwnBondFacts? Bond { get; init; }

    public OwnVisitFacts? Visit { get; init; }

    public OwnUnitFacts? Coming { get; init; }

    /// <summary>Photos are shared with them.</summary>
    public bool HasPhotos { get; init; }

    /// <summary>Something is written down that they agreed to or took back.</summary>
    public bool HasConsents { get; init; }

    /// <summary>The access log has a line about them.</summary>
    public bool WasSeen { get; init; }

    /// <summary>Whether the address they came by is confirmed; else photos, units, consents and the log are left out.</summary>
    public bool OpensAll { get; init; }

    /// <summary>The practice is the invented one.</summary>
    public bool IsDemo { get; init; }
}

public sealed record OwnBondFacts(
    LocalDate AppliedOn,
    Instant? AppliedAt,
    LocalDate OpensOn,
    LocalDate DueOn,
    LocalDate ClosesOn,
    IReadOnlyList<DueReason> Reasons,
    LocalDate? LiftedOn,
    int? LabelCureHours
);

public sealed record OwnVisitFacts(Guid Id, Instant StartsAt, string Zone, string Salon, bool Arrived);

/// <summary>A unit that is ordered or here and not yet worn.</summary>
/// <param name="PromisedFor">The newest promise.</param>
public sealed record OwnUnitFacts(UnitState State, LocalDate? PromisedFor)
{
    /// <summary>A promise is told only while something is awaited and the day is not past.</summary>
    public LocalDate? AwaitedOn(LocalDate today) => State.IsInFlight() && PromisedFor >= today ? PromisedFor : null;
}
