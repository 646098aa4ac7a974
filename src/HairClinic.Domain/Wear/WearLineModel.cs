using NodaTime;

namespace HairClinic.Domain.Wear;

/// <summary>Everything the wear line draws, already computed: days in, picture out.</summary>
/// <param name="From">First day drawn.</param>
/// <param name="To">Last day drawn.</param>
/// <param name="Today">The salon's day.</param>
/// <param name="Lanes">One per unit, oldest first.</param>
/// <param name="Visits">Past visits and booked ones.</param>
/// <param name="Gap">Days that are coming with no unit that still wears well, if nothing is done.</param>
public sealed record WearLineModel(
    LocalDate From,
    LocalDate To,
    LocalDate Today,
    IReadOnlyList<WearLane> Lanes,
    IReadOnlyList<WearVisit> Visits,
    WearGap? Gap = null
)
{
    /// <summary>The lane on the head today, if any.</summary>
    public WearLane? Worn => Lanes.FirstOrDefault(lane => lane.Open is not null);
}
