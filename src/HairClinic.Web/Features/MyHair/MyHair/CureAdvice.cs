namespace HairClinic.Web.Features.MyHair;

/// <summary>What may be done in each stretch of the cure. Common practice, no source; the label and the salon come first. The localiser's keys.</summary>
public static class CureAdvice
{
    private static readonly Duration FirstHours = Duration.FromHours(4);

    public static string SentenceAt(Instant appliedAt, Instant curedAt, Instant now) =>
        now - appliedAt < FirstHours
            ? "The first hours matter most: touch it as little as you can, stay cool, and wear nothing tight over it."
        : curedAt - now > FirstHours
            ? "A quiet day is fine: a walk, work at a desk, sleep on a soft pillow. No water, no sweat, no sport, nothing warm near it."
        : "Almost there. Keep it dry and cool until the time is up; then you may wash and move as usual.";
}
