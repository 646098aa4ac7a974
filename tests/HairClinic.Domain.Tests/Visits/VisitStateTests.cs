using HairClinic.Domain.Bonding;
using HairClinic.Domain.Chairs;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using NodaTime;

namespace HairClinic.Domain.Tests.Visits;

/// <summary>A visit from booked to over: which step may follow which, and what of chair, hands and client each one takes or gives back.</summary>
public sealed class VisitStateTests
{
    private static readonly Salon Salon = new(Guid.CreateVersion7(), "Elm Row", "Europe/London", "GBP");

    private static readonly (string Step, Action<Visit> Take, VisitState[] From, VisitState To)[] Steps =
    [
        ("arrive", v => v.Arrive(Booked.Day), [VisitState.Booked], VisitState.Arrived),
        ("begin", v => v.Begin(Booked.Day), [VisitState.Booked, VisitState.Arrived], VisitState.InChair),
        ("finish", v => v.Finish(Booked.Day), [VisitState.Booked, VisitState.Arrived, VisitState.InChair], VisitState.Done),
        ("call off", v => v.Cancel(), [VisitState.Booked, VisitState.Arrived], VisitState.Cancelled),
        ("did not come", v => v.MarkDidNotCome(Booked.At(12)), [VisitState.Booked], VisitState.DidNotCome),
    ];

    public static TheoryData<string, VisitState> EachStepFromEachState =>
        new(Steps.SelectMany(s => Enum.GetValues<VisitState>().Select(state => (s.Step, state))));

    public static TheoryData<VisitState> EachState => new(Enum.GetValues<VisitState>());

    [Theory]
    [MemberData(nameof(EachStepFromEachState))]
    public void A_step_is_taken_from_where_it_may_and_else_refused(string step, VisitState state)
    {
        var (_, take, from, to) = Steps.Single(s => s.Step == step);
        var visit = In(state);

        if (from.Contains(state))
        {
            take(visit);
            Assert.Equal(to, visit.State);
        }
        else
        {
            Assert.Equal($"This visit is {state} already.", Assert.Throws<Refusal>(() => take(visit)).Message);
            Assert.Equal(state, visit.State);
        }
    }

    [Fact]
    public void Before_its_day_nobody_has_come_and_before_its_time_nobody_failed_to()
    {
        var visit = Booked.Hour(10);
        var eve = Booked.Day.PlusDays(-1);

        foreach (var step in new Action[] { () => visit.Arrive(eve), () => visit.Begin(eve), () => visit.Finish(eve) })
            Assert.StartsWith("This visit is on ", Assert.Throws<Refusal>(step).Message, StringComparison.Ordinal);
        Assert.StartsWith(
            "This visit’s time has not come yet.",
            Assert.Throws<Refusal>(() => visit.MarkDidNotCome(Booked.At(10) - Duration.FromSeconds(1))).Message,
            StringComparison.Ordinal
        );
        Assert.Equal(VisitState.Booked, visit.State);
        visit.MarkDidNotCome(Booked.At(10));
        Assert.Equal(VisitState.DidNotCome, visit.State);
    }

    [Theory]
    [InlineData("call off")]
    [InlineData("did not come")]
    public void What_will_not_take_place_gives_back_chair_hands_and_client(string step)
    {
        var visit = Booked.From(Booked.At(10), (SegmentKind.HandsOn, 30), (SegmentKind.ChairFree, 60), (SegmentKind.HandsOn, 30));
        Assert.True(visit.HoldsChair && visit.HoldsClient);
        Assert.Equal([true, false, true], visit.Segments.Select(s => s.HoldsChair));

        Steps.Single(s => s.Step == step).Take(visit);

        Assert.False(visit.HoldsChair || visit.HoldsClient);
        Assert.All(visit.Segments, s => Assert.False(s.HoldsChair || s.HoldsHands));
        visit.UndoStateChange();
        Assert.True(visit.HoldsChair && visit.HoldsClient);
        Assert.Equal([(true, true), (false, false), (true, true)], visit.Segments.Select(s => (s.HoldsChair, s.HoldsHands)));
    }

    [Fact]
    public void One_that_took_place_keeps_its_chair_and_lets_its_client_go()
    {
        var visit = Booked.Hour(10);

        visit.Finish(Booked.Day);

        Assert.Equal((true, false), (visit.HoldsChair, visit.HoldsClient));
    }

    [Theory]
    [InlineData(VisitState.InChair, VisitState.Arrived)]
    [InlineData(VisitState.Arrived, VisitState.Booked)]
    [InlineData(VisitState.DidNotCome, VisitState.Booked)]
    [InlineData(VisitState.Cancelled, VisitState.Booked)]
    public void The_last_word_is_taken_back(VisitState from, VisitState to)
    {
        var visit = In(from);

        visit.UndoStateChange();

        Assert.Equal(to, visit.State);
    }

    [Theory]
    [InlineData(VisitState.Booked)]
    [InlineData(VisitState.Done)]
    public void Where_there_is_none_it_is_said(VisitState state) =>
        Assert.Equal(
            $"This visit is {state}: there is nothing to take back.",
            Assert.Throws<Refusal>(() => In(state).UndoStateChange()).Message
        );

    [Theory]
    [MemberData(nameof(EachState))]
    public void Only_one_that_is_still_to_come_is_moved(VisitState state)
    {
        var visit = In(state);

        if (state is VisitState.Booked or VisitState.Arrived)
        {
            Booked.Place(visit, Booked.At(15), (SegmentKind.HandsOn, 45));
            Assert.Equal((Booked.At(15), Booked.At(15, 45)), (visit.StartsAt, visit.EndsAt));
        }
        else
        {
            Assert.Equal(
                $"This visit is {state}: it cannot be moved.",
                Assert.Throws<Refusal>(() => Booked.Place(visit, Booked.At(15), (SegmentKind.HandsOn, 45))).Message
            );
        }
    }

    [Fact]
    public void Its_steps_follow_one_another_on_its_salons_day_in_the_services_order()
    {
        var service = new ServiceKind(Guid.CreateVersion7(), "Rebond", ServicePurpose.Rebond);
        service.SetSteps([(Guid.CreateVersion7(), SegmentKind.HandsOn, 50), (Guid.CreateVersion7(), SegmentKind.Wait, 20)]);
        var auckland = new Salon(Guid.CreateVersion7(), "Quay", "Pacific/Auckland", "NZD");
        var visit = new Visit(Guid.CreateVersion7(), Guid.CreateVersion7(), Salon.Id, service.Id);
        var (chair, person) = (Guid.CreateVersion7(), Guid.CreateVersion7());

        visit.PutAt(service, Booked.At(20), chair, person, auckland, [Guid.CreateVersion7(), Guid.CreateVersion7()]);

        // Eight in the evening, UTC, is nine the next morning there.
        Assert.Equal((auckland.Id, Booked.Day.PlusDays(1)), (visit.SalonId, visit.Day));
        Assert.Equal(
            [(1, SegmentKind.HandsOn, Booked.At(20), Booked.At(20, 50)), (2, SegmentKind.Wait, Booked.At(20, 50), Booked.At(21, 10))],
            visit.Segments.Select(s => (s.Position, s.Kind, s.StartsAt, s.EndsAt))
        );
        Assert.All(visit.Segments, s => Assert.Equal(((Guid?)chair, (Guid?)person), (s.ChairId, s.PersonId)));
        Assert.Equal((Booked.At(21, 10), true), (visit.EndsAt, visit.HoldsChair));
    }

    [Fact]
    public void One_without_a_chair_takes_none()
    {
        var visit = new Visit(Guid.CreateVersion7(), Guid.CreateVersion7(), Salon.Id, Guid.CreateVersion7());

        visit.PutAt([(SegmentKind.HandsOn, 30)], Booked.At(10), chairId: null, personId: null, Salon, [Guid.CreateVersion7()]);

        Assert.False(visit.HoldsChair);
        Assert.False(visit.Segments[0].HoldsChair || visit.Segments[0].HoldsHands);
    }

    [Theory]
    [InlineData(VisitState.Cancelled)]
    [InlineData(VisitState.DidNotCome)]
    public void What_did_not_take_place_is_not_logged(VisitState state)
    {
        var head = new Head();
        head.Visit.ImportState(state, "row 1", head.Today);
        var sentence = $"This visit is {state} already.";

        Assert.Equal(sentence, Assert.Throws<Refusal>(() => head.Rebond()).Message);
        Assert.Equal(
            sentence,
            Assert
                .Throws<Refusal>(() =>
                    head.Visit.RecordCare(Guid.CreateVersion7(), head.Bond, seen: null, head.Salon, head.Now, null, null)
                )
                .Message
        );
        Assert.True(head.Bond.IsOpen);
        Assert.Null(head.Visit.Record);
    }

    [Theory]
    [InlineData(VisitState.Booked, 0, true, true)]
    [InlineData(VisitState.Booked, -1, true, false)]
    [InlineData(VisitState.Done, 0, true, false)]
    [InlineData(VisitState.Cancelled, 0, false, false)]
    [InlineData(VisitState.DidNotCome, 0, false, false)]
    public void What_an_old_book_says_of_days_that_are_over_takes_nobodys_time(VisitState state, int days, bool chair, bool client)
    {
        var visit = Booked.Hour(10);

        visit.ImportState(state, "row 7", today: Booked.Day.PlusDays(-days));

        Assert.Equal((state, "row 7", chair, client), (visit.State, visit.BookKey, visit.HoldsChair, visit.HoldsClient));
    }

    [Fact]
    public void A_remark_of_blanks_is_none()
    {
        var visit = Booked.Hour(10);
        visit.SetNote("  Brings the spare ");
        Assert.Equal("Brings the spare", visit.Note);
        visit.SetNote(" ");
        Assert.Null(visit.Note);
    }

    private static Visit In(VisitState state)
    {
        var visit = Booked.Hour(10);
        visit.ImportState(state, "row 1", Booked.Day);
        return visit;
    }
}
