using HairClinic.Web.Data.Writes;

namespace HairClinic.Web.Features.Settings;

/// <summary>The last step: the guide is finished and never shown again.</summary>
public sealed class BringBinder(WriteOnce writes, IClock clock)
{
    public Task<Outcome> FinishGuideAsync(Guid key, CancellationToken cancellation) =>
        writes.RunAsync(
            key,
            nameof(BringBinder),
            new Input(),
            async db =>
            {
                var settings = await db.PracticeSettings.SingleAsync(cancellation);
                settings.FinishGuide(clock.GetCurrentInstant());
                return new Outcome(settings.GuideFinishedAt!.Value);
            },
            cancellation
        );

    /// <summary>There is nothing to ask.</summary>
    public sealed record Input;

    public sealed record Outcome(Instant FinishedAt);
}
