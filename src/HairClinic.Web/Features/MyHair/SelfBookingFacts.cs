using HairClinic.Web.Data.Books;

namespace HairClinic.Web.Features.MyHair;

/// <summary>What booking by a client goes by.</summary>
public sealed record SelfBookingFacts(Salon Salon, LocalDate? DueOn, Guid? UsualPerson, int MoveHours, IReadOnlyList<ServiceKind> Services)
{
    public SelfBookingCriteria CriteriaFor(ServiceKind service) =>
        new(
            Salon,
            service.Id,
            service.Purpose,
            [.. service.Steps.OrderBy(s => s.Position).Select(s => new ServiceSegment(s.Kind, s.Minutes))],
            UsualPerson
        );
}

/// <summary>What a time is sought for.</summary>
public sealed record SelfBookingCriteria(
    Salon Salon,
    Guid ServiceKindId,
    ServicePurpose Purpose,
    IReadOnlyList<ServiceSegment> Steps,
    Guid? UsualPerson
)
{
    /// <summary>The visit that is to be moved: its own time counts as free.</summary>
    public Guid? ButVisit { get; init; }
}

/// <summary>A start that is free, on the salon's own clock.</summary>
public sealed record FreeStart(Instant StartsAt, LocalDateTime Local)
{
    public static FreeStart FromInstant(Instant start, DateTimeZone zone) => new(start, start.InZone(zone).LocalDateTime);
}

/// <summary>Their own visit and until when they may change it themselves.</summary>
public sealed record OwnVisit(Visit Visit, Salon Salon, ServicePurpose Purpose, int MoveHours)
{
    public bool MayChange(Instant now) => SelfBookingRule.MayChange(Visit.State, Visit.StartsAt, MoveHours, now);

    public FreeStart Slot => FreeStart.FromInstant(Visit.StartsAt, Salon.TimeZone);

    /// <summary>It keeps its length and its steps; a visit of an old book has no steps: its whole length is one.</summary>
    public IReadOnlyList<(SegmentKind Kind, int Minutes)> Steps =>
        Visit.Segments.Count == 0
            ? [(SegmentKind.HandsOn, (int)(Visit.EndsAt - Visit.StartsAt).TotalMinutes)]
            : [.. Visit.Segments.OrderBy(s => s.Position).Select(s => (s.Kind, (int)(s.EndsAt - s.StartsAt).TotalMinutes))];

    public SelfBookingCriteria Wish =>
        new(Salon, Visit.ServiceKindId, Purpose, [.. Steps.Select(s => new ServiceSegment(s.Kind, s.Minutes))], Visit.PersonId)
        {
            ButVisit = Visit.Id,
        };
}

/// <summary>What became of a start a client chose.</summary>
/// <param name="At">On the salon's clock; null when it was not free.</param>
public sealed record SelfBookingOutcome(LocalDateTime? At)
{
    /// <summary>The free times nearest to the one that was lost.</summary>
    public IReadOnlyList<FreeStart> Nearest { get; init; } = [];

    /// <summary>The visit of their own that they have then; null when somebody was faster.</summary>
    public ClashingVisit? Own { get; init; }
}

/// <summary>The time was free when the form was drawn and is not any more.</summary>
public sealed class SlotTakenException() : InvalidOperationException("Somebody else took this time.");

/// <summary>What a form names is not the client's own; to them it does not exist.</summary>
public sealed class NotTheirsException() : InvalidOperationException("There is no such thing of this client's.");
