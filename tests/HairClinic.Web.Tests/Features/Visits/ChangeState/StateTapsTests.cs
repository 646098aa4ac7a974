using Bunit;
using HairClinic.Domain.Visits;
using HairClinic.Web.Features.Visits.ChangeState;
using HairClinic.Web.Tests.Ui;
using Slice = HairClinic.Web.Features.Visits.ChangeState.ChangeState;

namespace HairClinic.Web.Tests.Features.Visits.ChangeState;

public sealed class StateTapsTests : UiTestContext
{
    [Theory]
    [InlineData(VisitState.Booked, "Arrived|In the chair|Did not come")]
    [InlineData(VisitState.Arrived, "In the chair|Not here yet")]
    [InlineData(VisitState.InChair, "Not in the chair yet")]
    [InlineData(VisitState.DidNotCome, "Came after all")]
    [InlineData(VisitState.Cancelled, "Comes after all")]
    [InlineData(VisitState.Done, "")]
    public void Each_state_offers_the_words_that_can_follow(VisitState state, string words)
    {
        var taps = Render<StateTaps>(p => p.Add(t => t.State, state).Add(t => t.Name, "Ada"));

        Assert.Equal(
            words,
            string.Join('|', taps.FindAll("button").Select(b => b.TextContent.Replace(" Ada", "", StringComparison.Ordinal)))
        );
    }

    [Fact]
    public void A_tap_says_the_step_it_means()
    {
        List<Slice.Step> steps = [];
        var taps = Render<StateTaps>(p => p.Add(t => t.State, VisitState.Booked).Add(t => t.Name, "Ada").Add(t => t.OnStep, steps.Add));

        for (var i = 0; i < 3; i++)
            taps.FindAll("button")[i].Click();

        Assert.Equal([Slice.Step.Arrive, Slice.Step.Begin, Slice.Step.DidNotCome], steps);
    }
}
