using HairClinic.Domain.Bonding;
using HairClinic.Domain.Chairs;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using NodaTime;

namespace HairClinic.Domain.Tests.Visits;

/// <summary>A bond comes off and no new one is made.</summary>
public sealed class VisitTakeDownTests
{
    private readonly Head _head = new();

    public VisitTakeDownTests() => Booked.Place(_head.Visit, _head.Now, (SegmentKind.HandsOn, 60));

    [Fact]
    public void The_bond_comes_off_the_unit_rests_and_nothing_goes_on()
    {
        var hold = TakeDown(Head.Sound(RemovalReason.Rest));

        Assert.Equal((_head.Today, RemovalReason.Rest), (_head.Bond.RemovedOn, _head.Bond.RemovedBecause));
        Assert.Equal((UnitState.Resting, VisitState.Done), (_head.Worn.State, _head.Visit.State));
        Assert.Equal((_head.Worn.Id, InspectionGrades.AsNew), (_head.Visit.Record!.RemovedUnitId, _head.Visit.Record.Grades));
        Assert.Equal(new HoldObservation(HoldCensoring.AtLeast, 28, null), hold);
        Assert.Null(_head.Bond.NoBondUntil);
    }

    [Theory]
    [InlineData(RemovalReason.Scheduled)]
    [InlineData(RemovalReason.TakenBack)]
    public void What_was_only_due_is_followed_by_a_bond(RemovalReason because)
    {
        Refused.Saying(
            "Say why it came off: one that was only due is followed by a new bond.",
            () => TakeDown(Head.Lifted(on: null) with { Because = because })
        );
        AssertUntouched();
    }

    [Theory]
    [InlineData(RemovalReason.Skin)]
    [InlineData(RemovalReason.Operation)]
    [InlineData(RemovalReason.Treatment)]
    [InlineData(RemovalReason.Rest)]
    [InlineData(RemovalReason.Leaving)]
    public void After_these_no_bond_is_made_at_the_same_visit(RemovalReason because)
    {
        Refused.Saying("After this no bond is made. Log the take-down only.", () => _head.Rebond(Head.Sound(because)));
        AssertUntouched();
        TakeDown(Head.Sound(because));
        Assert.False(_head.Bond.IsOpen);
    }

    [Fact]
    public void A_lift_as_the_reason_wants_an_edge_that_was_up()
    {
        Refused.Saying("If it came off because it lifted, say that an edge was up.", () => TakeDown(Head.Sound(RemovalReason.Lifted)));
        AssertUntouched();
    }

    [Fact]
    public void It_is_not_logged_twice_nor_when_called_off_nor_before_its_day()
    {
        TakeDown(Head.Sound(RemovalReason.Rest));
        Refused.Saying("This visit is logged already.", () => TakeDown(Head.Sound(RemovalReason.Rest)));

        var cancelled = new Head();
        cancelled.Visit.Cancel();
        Refused.Saying("This visit is {0} already.", () => TakeDown(Head.Sound(RemovalReason.Rest), head: cancelled));

        var tomorrow = new Head();
        Booked.Place(tomorrow.Visit, tomorrow.Now + Duration.FromDays(1), (SegmentKind.HandsOn, 60));
        Refused.Saying(
            "This visit is on {0}, and that day has not come. If they came today, move it to today first.",
            () => TakeDown(Head.Sound(RemovalReason.Rest), head: tomorrow)
        );
        Assert.True(tomorrow.Bond.IsOpen);
    }

    [Fact]
    public void A_visit_logged_a_day_late_took_it_off_on_its_own_day()
    {
        var day = _head.Today;
        _head.At(29);

        TakeDown(Head.Sound(RemovalReason.Rest));

        Assert.Equal(day, _head.Bond.RemovedOn);
    }

    [Fact]
    public void Until_when_no_bond_is_made_lies_after_the_take_down_and_speaks_while_the_head_is_bare()
    {
        Refused.Saying(
            "Until when no bond is made lies after the day of the take-down, {0}.",
            () => TakeDown(Head.Sound(RemovalReason.Skin), until: _head.Today)
        );
        AssertUntouched();

        var until = _head.Today.PlusDays(14);
        TakeDown(Head.Sound(RemovalReason.Skin), until);

        Assert.Equal((true, false), (_head.Bond.AsksToWaitOn(until.PlusDays(-1)), _head.Bond.AsksToWaitOn(until)));
    }

    [Fact]
    public void What_was_used_is_kept_with_its_lot_and_once_only()
    {
        var (remover, lot) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        (Guid Id, AppliedProduct Use) Line(Guid? of) => (Guid.CreateVersion7(), new AppliedProduct(remover, of, null));

        Refused.Saying(
            "The same product and lot is listed twice.",
            () => TakeDown(Head.Sound(RemovalReason.Reaction), products: [Line(lot), Line(lot)])
        );
        AssertUntouched();
        TakeDown(Head.Sound(RemovalReason.Reaction), products: [Line(lot), Line(null)]);

        Assert.Equal([(remover, lot), (remover, (Guid?)null)], _head.Visit.Record!.TakeDownProducts.Select(p => (p.ProductId, p.LotId)));
        Assert.All(_head.Visit.Record.TakeDownProducts, p => Assert.Equal(_head.Visit.Record.Id, p.VisitRecordId));
    }

    [Fact]
    public void A_unit_lost_at_home_leaves_service_on_the_day_it_came_off_and_nobody_looked_at_it()
    {
        var on = _head.Today.PlusDays(-3);

        var hold = TakeDown(Head.Sound(RemovalReason.LostAtHome) with { LiftedOn = on });

        Assert.Equal((UnitState.Lost, on), (_head.Worn.State, _head.Worn.Dates.RetiredOn));
        Assert.Equal((on, on), (_head.Bond.RemovedOn, _head.Bond.Lift!.LiftedOn));
        Assert.Equal((InspectionGrades.NotLookedAt, true), (_head.Visit.Record!.Grades, _head.Visit.Record.FoundLifted));
        Assert.Equal(new HoldObservation(HoldCensoring.Exact, 25, 25), hold);
    }

    [Fact]
    public void A_unit_brought_in_rests_and_may_be_bonded_again_at_the_same_visit()
    {
        TakeDown(Head.Sound(RemovalReason.BroughtIn) with { LiftedOn = _head.Today.PlusDays(-1) });
        Assert.Equal((UnitState.Resting, _head.Today.PlusDays(-1)), (_head.Worn.State, _head.Bond.RemovedOn));

        var again = new Head();
        var made = again.Rebond(Head.Sound(RemovalReason.BroughtIn));
        Assert.Equal((again.Worn.Id, again.Today), (made.HairSystemId, again.Bond.RemovedOn));
    }

    [Fact]
    public void A_unit_that_is_lost_does_not_go_on_again_but_the_spare_does()
    {
        Refused.Saying("Unit {0} is {1}: it cannot be bonded.", () => _head.Rebond(Head.Sound(RemovalReason.LostAtHome)));
        AssertUntouched();

        _head.Rebond(Head.Sound(RemovalReason.LostAtHome), _head.NewBond(_head.Spare));

        Assert.Equal((UnitState.Lost, UnitState.Bonded), (_head.Worn.State, _head.Spare.State));
    }

    [Fact]
    public void What_came_off_at_home_is_told_of_later_and_an_old_book_may_say_so_again()
    {
        var off = _head.Today.PlusDays(-3);
        TakeDown(Head.Sound(RemovalReason.BroughtIn) with { LiftedOn = off });

        _head.Bond.ReportLift(new Lift(_head.Today, off, null, SpotFixed: false));

        Refused.Saying(
            "This bond was taken off on {0}; it cannot have lifted later.",
            () => _head.Bond.ReportLift(new Lift(_head.Today, off.PlusDays(1), null, SpotFixed: false))
        );
    }

    [Theory]
    [InlineData(RemovalReason.Skin)]
    [InlineData(RemovalReason.LostAtHome)]
    [InlineData(RemovalReason.BroughtIn)]
    public void Taken_back_the_old_bond_is_on_the_head_as_before(RemovalReason because)
    {
        TakeDown(Head.Sound(because), until: _head.Today.PlusDays(20));

        var record = Undo();

        Assert.Equal(_head.Worn.Id, record.RemovedUnitId);
        Assert.True(_head.Bond.IsOpen);
        Assert.Equal(((LocalDate?)null, (Lift?)null), (_head.Bond.NoBondUntil, _head.Bond.Lift));
        Assert.Equal(
            (UnitState.Bonded, (LocalDate?)null, (string?)null),
            (_head.Worn.State, _head.Worn.Dates.RetiredOn, _head.Worn.RetiredBecause)
        );
        Assert.Equal((Head.BondedOn, VisitState.InChair), (_head.Worn.Dates.FirstBondedOn, _head.Visit.State));
        TakeDown(Head.Sound(because));
    }

    [Fact]
    public void A_lift_found_at_a_visit_logged_late_goes_with_its_log()
    {
        _head.At(29);
        TakeDown(Head.Lifted(on: null) with { Because = RemovalReason.Rest });

        Undo();

        Assert.Null(_head.Bond.Lift);
    }

    [Fact]
    public void Once_the_head_is_bonded_again_the_take_down_stands()
    {
        TakeDown(Head.Sound(RemovalReason.Rest));

        Refused.Saying("This head was bonded again since. Take that log back first.", () => Undo(bondedSince: true));
        Assert.False(_head.Bond.IsOpen);
    }

    [Fact]
    public void A_unit_that_was_found_since_is_not_taken_for_lost()
    {
        TakeDown(Head.Sound(RemovalReason.LostAtHome));
        _head.Worn.ImportState(UnitState.ReturnedToClient, _head.Worn.Dates, "found in a drawer");

        Refused.Saying("Unit {0} is {1}: it cannot be bonded.", () => Undo());
    }

    private void AssertUntouched()
    {
        Assert.True(_head.Bond.IsOpen);
        Assert.Equal(UnitState.Bonded, _head.Worn.State);
        Assert.Null(_head.Visit.Record);
        Assert.Null(_head.Bond.NoBondUntil);
    }

    private HoldObservation TakeDown(
        TakeDown found,
        LocalDate? until = null,
        IReadOnlyList<(Guid, AppliedProduct)>? products = null,
        Head? head = null
    )
    {
        var on = head ?? _head;
        return on.Visit.RecordTakeDown(
            Guid.CreateVersion7(),
            (on.Bond, on.Worn, found),
            products ?? [],
            until,
            on.Salon,
            on.Now,
            Head.Stylist,
            note: null
        );
    }

    private VisitRecord Undo(bool bondedSince = false) =>
        _head.Visit.UndoRecord(null, false, (_head.Bond, _head.Worn), bondedSince, _head.Salon, _head.Now, Head.Stylist, false);
}
