using HairClinic.Domain.Bonding;
using HairClinic.Domain.Chairs;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;

namespace HairClinic.Domain.Tests.Visits;

public sealed class RecordCareTests
{
    private readonly Head _head = new Head().At(14);

    [Fact]
    public void A_wash_that_finds_every_edge_down_moves_the_last_sound_day()
    {
        Log(EdgeFindings.Sound);

        Assert.Equal(_head.Today, _head.Bond.LastSoundOn);
        Assert.Equal(VisitState.Done, _head.Visit.State);
    }

    [Fact]
    public void Where_nobody_looked_nothing_is_claimed_about_the_edges()
    {
        Log(seen: null);

        Assert.Null(_head.Bond.LastSoundOn);
        Assert.False(_head.Visit.Record!.FoundLifted);
    }

    [Fact]
    public void A_lift_put_down_again_ends_the_hold_and_leaves_the_bond_on()
    {
        Log(new EdgeFindings(Up: true, _head.Today.PlusDays(-1), LiftZone.Nape, SpotFixed: true));

        Assert.Equal(new Lift(_head.Today, _head.Today.PlusDays(-1), LiftZone.Nape, SpotFixed: true), _head.Bond.Lift);
        Assert.True(_head.Bond.IsOpen);
        Assert.Equal((true, LiftZone.Nape), (_head.Visit.Record!.FoundLifted, _head.Visit.Record.LiftZone));
    }

    [Fact]
    public void Edges_cannot_be_seen_on_a_head_without_a_bond() =>
        Refused.Saying(
            "No bond is on this head, so no edge can be up or down.",
            () => _head.Visit.RecordCare(Guid.CreateVersion7(), null, EdgeFindings.Sound, _head.Salon, _head.Now, Head.Stylist, null)
        );

    [Fact]
    public void A_visit_is_logged_once()
    {
        Log(EdgeFindings.Sound);

        Refused.Saying("This visit is logged already.", () => Log(EdgeFindings.Sound));
    }

    [Fact]
    public void A_day_that_has_not_come_takes_no_record()
    {
        Booked.Place(_head.Visit, _head.Now + NodaTime.Duration.FromDays(1), (SegmentKind.HandsOn, 60));

        Assert.StartsWith("This visit is on ", Assert.Throws<Refusal>(() => Log(EdgeFindings.Sound)).Message, StringComparison.Ordinal);

        Assert.Equal((VisitState.Booked, null), (_head.Visit.State, _head.Visit.Record));
        Assert.Null(_head.Bond.LastSoundOn);
    }

    private void Log(EdgeFindings? seen) =>
        _head.Visit.RecordCare(Guid.CreateVersion7(), _head.Bond, seen, _head.Salon, _head.Now, Head.Stylist, "Note");
}
