using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data.Writes;
using NodaTime;
using Slice = HairClinic.Web.Features.Visits.ChangeState;

namespace HairClinic.Web.Tests.Features.Visits.ChangeState;

public sealed class ChangeStateTests(PgServer server)
{
    private readonly VisitScene _scene = new();
    private Visit _visit = null!;

    [Fact]
    public async Task A_client_arrives_and_sits_down_with_one_tap_each()
    {
        await using var clinic = await OpenAsync();

        Assert.Equal(VisitState.Arrived, await TapAsync(clinic, Slice.Step.Arrive));
        Assert.Equal(VisitState.InChair, await TapAsync(clinic, Slice.Step.Begin));
    }

    [Fact]
    public async Task Who_did_not_come_gives_the_chair_back_and_takes_it_again_when_they_come_after_all()
    {
        await using var clinic = await OpenAsync();

        await TapAsync(clinic, Slice.Step.DidNotCome);
        var missed = await VisitScene.ReadAsync(clinic, _visit.Id);
        await TapAsync(clinic, Slice.Step.TakeBack);
        var back = await VisitScene.ReadAsync(clinic, _visit.Id);

        Assert.Equal((false, VisitState.DidNotCome), (missed.HoldsChair, missed.State));
        Assert.All(missed.Segments, s => Assert.False(s.HoldsHands));
        Assert.Equal((true, VisitState.Booked), (back.HoldsChair, back.State));
        Assert.Equal([true, false, true], back.Segments.OrderBy(s => s.Position).Select(s => s.HoldsHands));
    }

    [Fact]
    public async Task Nobody_takes_back_a_place_that_was_given_away()
    {
        await using var clinic = await OpenAsync();
        await TapAsync(clinic, Slice.Step.DidNotCome);
        await clinic.LayAsync(s => _scene.Book(s, _scene.Rebond, 0, _scene.Ivo, _visit.StartsAt, _scene.Bo));

        var refusal = await Assert.ThrowsAsync<Refusal>(() => TapAsync(clinic, Slice.Step.TakeBack));

        Assert.StartsWith("Its place was given to somebody else.", refusal.Message, StringComparison.Ordinal);
        Assert.Equal(VisitState.DidNotCome, (await VisitScene.ReadAsync(clinic, _visit.Id)).State);
    }

    [Fact]
    public async Task A_visit_of_tomorrow_takes_no_arrived_no_chair_and_nobody_stayed_away()
    {
        await using var clinic = await OpenAsync();
        clinic.Clock.Reset(TestClinic.UsualNow);

        foreach (var step in new[] { Slice.Step.Arrive, Slice.Step.Begin })
            await Refused.SayingAsync(
                "This visit is on {0}, and that day has not come. If they came today, move it to today first.",
                () => TapAsync(clinic, step)
            );
        await Refused.SayingAsync(
            "This visit’s time has not come yet. If they will not come, call it off.",
            () => TapAsync(clinic, Slice.Step.DidNotCome)
        );

        var still = await VisitScene.ReadAsync(clinic, _visit.Id);
        Assert.Equal((VisitState.Booked, true), (still.State, still.HoldsChair));
    }

    [Fact]
    public async Task Nobody_takes_back_a_client_who_was_booked_elsewhere_since()
    {
        await using var clinic = await OpenAsync();
        await TapAsync(clinic, Slice.Step.DidNotCome);
        await clinic.LayAsync(s => _scene.Book(s, _scene.Wash, 1, _scene.Ivo, _visit.StartsAt));

        var refusal = await Assert.ThrowsAsync<Refusal>(() => TapAsync(clinic, Slice.Step.TakeBack));

        Assert.Equal<object>(
            ["Ada Fenwick", VisitScene.Thursday, new LocalTime(9, 0), new LocalTime(9, 45), "Elm Row", "Chair 2"],
            refusal.Arguments
        );
    }

    [Fact]
    public async Task A_slip_is_taken_back_step_by_step()
    {
        await using var clinic = await OpenAsync();
        await TapAsync(clinic, Slice.Step.Begin);

        Assert.Equal(VisitState.Arrived, await TapAsync(clinic, Slice.Step.TakeBack));
        Assert.Equal(VisitState.Booked, await TapAsync(clinic, Slice.Step.TakeBack));
        await Refused.SayingAsync("This visit is {0}: there is nothing to take back.", () => TapAsync(clinic, Slice.Step.TakeBack));
    }

    [Fact]
    public async Task Of_two_who_tap_on_the_same_visit_the_second_is_told_and_changes_nothing()
    {
        await using var clinic = await OpenAsync();
        var seen = (await VisitScene.ReadAsync(clinic, _visit.Id)).Version;
        await TapAsync(clinic, Slice.Step.Arrive, seen);

        await Assert.ThrowsAsync<OvertakenException>(() => TapAsync(clinic, Slice.Step.Begin, seen));

        Assert.Equal(VisitState.Arrived, (await VisitScene.ReadAsync(clinic, _visit.Id)).State);
    }

    [Fact]
    public async Task A_tap_takes_two_round_trips()
    {
        await using var clinic = await OpenAsync();
        var seen = (await VisitScene.ReadAsync(clinic, _visit.Id)).Version;
        clinic.Commands.Clear();

        await TapAsync(clinic, Slice.Step.Arrive, seen);

        Assert.Equal(2, clinic.Commands.All.Count);
    }

    private async Task<TestClinic> OpenAsync()
    {
        var clinic = await TestClinic.OpenAsync(
            server,
            s =>
            {
                _scene.Lay(s);
                _visit = _scene.Book(s, _scene.Coats, 0, _scene.Mara, _scene.At(VisitScene.Thursday, 9));
            }
        );
        clinic.Clock.Reset(_scene.At(VisitScene.Thursday, 9, 20));
        return clinic;
    }

    private async Task<VisitState> TapAsync(TestClinic clinic, Slice.Step step, uint? version = null)
    {
        var input = new Slice.Input(_visit.Id, version ?? (await VisitScene.ReadAsync(clinic, _visit.Id)).Version, step);
        var outcome = await clinic.UseAsync<Slice, Slice.Outcome>(
            _scene.AtDesk(clinic),
            slice => slice.SaveAsync(Guid.CreateVersion7(), input, TestContext.Current.CancellationToken)
        );
        return outcome.State;
    }
}
