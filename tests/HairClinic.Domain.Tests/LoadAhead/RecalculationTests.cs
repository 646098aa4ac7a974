using HairClinic.Domain.LoadAhead;
using NodaTime;

namespace HairClinic.Domain.Tests.LoadAhead;

public sealed class RecalculationTests
{
    private static readonly Instant Now = Instant.FromUtc(2027, 2, 3, 2, 0);

    [Fact]
    public void Somebody_may_stop_it_until_it_is_over()
    {
        var run = new Recalculation(Guid.NewGuid(), Guid.NewGuid(), Now);
        Assert.False(run.StopAsked);
        run.Start(Now);
        run.AskToStop();
        Assert.True(run.StopAsked);

        run.Finish(RecalculationState.Stopped, Now);

        Assert.True(run.IsOver);
        Refused.Saying("It has ended already.", run.AskToStop);
    }

    [Fact]
    public void It_tells_how_far_it_is_and_how_it_ended()
    {
        var run = new Recalculation(Guid.NewGuid(), null, Now);
        Assert.Equal((RecalculationState.Waiting, false), (run.State, run.IsOver));

        run.Start(Now + Duration.FromMinutes(1));
        run.ReportProgress(RecalculationStage.Reading, 3, 20);
        Assert.Equal((RecalculationState.Running, 3, 20), (run.State, run.Done, run.Total));

        run.Finish(RecalculationState.Failed, Now + Duration.FromMinutes(2), "Timeout");
        Assert.Equal((RecalculationState.Failed, "Timeout"), (run.State, run.Fault));
        Assert.Equal((Now + Duration.FromMinutes(1), Now + Duration.FromMinutes(2)), (run.StartedAt, run.EndedAt));
    }
}
