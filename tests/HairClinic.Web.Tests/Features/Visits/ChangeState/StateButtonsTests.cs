using Bunit;
using HairClinic.Domain.Visits;
using HairClinic.Web.Features.Visits;
using HairClinic.Web.Language;
using HairClinic.Web.Tests.Ui;
using Slice = HairClinic.Web.Features.Visits.ChangeState;

namespace HairClinic.Web.Tests.Features.Visits.ChangeState;

public sealed class StateButtonsTests : UiTestContext
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
        Assert.Equal(words, Words(state, dayHasCome: true, timeHasCome: true));
    }

    [Fact]
    public void A_day_that_has_not_come_takes_no_word_and_an_hour_that_has_not_come_nobody_missed()
    {
        Assert.Equal("", Words(VisitState.Booked, dayHasCome: false, timeHasCome: false));
        Assert.Equal("Arrived|In the chair", Words(VisitState.Booked, dayHasCome: true, timeHasCome: false));
        // What was tapped by mistake is taken back on any day.
        Assert.Equal("Not here yet", Words(VisitState.Arrived, dayHasCome: false, timeHasCome: false));
    }

    private string Words(VisitState state, bool dayHasCome, bool timeHasCome)
    {
        var taps = Render<StateButtons>(p =>
            p.Add(t => t.State, state).Add(t => t.Name, "Ada").Add(t => t.DayHasCome, dayHasCome).Add(t => t.TimeHasCome, timeHasCome)
        );
        return string.Join('|', taps.FindAll("button").Select(b => b.TextContent.Replace(" Ada", "", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_tap_says_the_step_it_means()
    {
        List<Slice.Step> steps = [];
        var taps = Render<StateButtons>(p =>
            p.Add(t => t.State, VisitState.Booked)
                .Add(t => t.Name, "Ada")
                .Add(t => t.DayHasCome, true)
                .Add(t => t.TimeHasCome, true)
                .Add(t => t.OnStep, steps.Add)
        );

        for (var i = 0; i < 3; i++)
            taps.FindAll("button")[i].Click();

        Assert.Equal([Slice.Step.Arrive, Slice.Step.Begin, Slice.Step.DidNotCome], steps);
    }
}
