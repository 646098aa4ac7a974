using HairClinic.Web.Ui.Feedback;

namespace HairClinic.Web.Ui.Lanes;

/// <summary>A visit on a chair. Minutes count from the salon's midnight.</summary>
/// <param name="Title">Who; blanked by the cover.</param>
/// <param name="Subtitle">What for, and whose hands.</param>
/// <param name="State">The word for where it stands: "booked", "arrived".</param>
/// <param name="Href">Where a tap leads; null: nowhere.</param>
public sealed record LaneBlock(
    Guid Id,
    Guid ChairId,
    int StartMinute,
    int EndMinute,
    string Title,
    string? Subtitle,
    string State,
    string? Href
)
{
    public Mark Mark { get; init; } = Mark.Open;

    /// <summary>Hands-on and waiting spells inside the visit; empty means hands-on throughout.</summary>
    public IReadOnlyList<LaneSegment> Segments { get; init; } = [];
}
