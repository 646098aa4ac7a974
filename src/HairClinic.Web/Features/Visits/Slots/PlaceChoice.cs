using NodaTime;

namespace HairClinic.Web.Features.Visits;

/// <summary>Where and when a visit is wanted: a slot that was offered, or a day and a time on the salon's clock.</summary>
public record PlaceChoice
{
    public Guid ChairId { get; set; }

    public Guid PersonId { get; set; }

    /// <summary>The start of an offered slot; it goes before day and time.</summary>
    public Instant? StartsAt { get; set; }

    public LocalDate? Day { get; set; }

    public LocalTime? Time { get; set; }

    /// <summary>Whoever books was shown the doubts and means it.</summary>
    public bool DespiteDoubts { get; set; }
}
