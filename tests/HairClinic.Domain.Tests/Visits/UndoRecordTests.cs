using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;

namespace HairClinic.Domain.Tests.Visits;

public sealed class UndoRecordTests
{
    private readonly Head _head = new();

    [Fact]
    public void Taken_back_the_old_bond_is_on_the_head_and_the_visit_in_the_chair()
    {
        var made = _head.Rebond();

        Undo(made, _head.Worn, madeWasFirst: false);

        Assert.True(_head.Bond.IsOpen);
        Assert.Equal((UnitState.Bonded, VisitState.InChair), (_head.Worn.State, _head.Visit.State));
        Assert.Null(_head.Visit.Record);
    }

    [Fact]
    public void Taken_back_the_spare_was_never_bonded_and_the_worn_unit_is_on_again()
    {
        var made = _head.Rebond(made: _head.NewBond(_head.Spare));

        Undo(made, _head.Spare, madeWasFirst: true);

        Assert.Equal((UnitState.Bonded, UnitState.Accepted), (_head.Worn.State, _head.Spare.State));
        Assert.Null(_head.Spare.Dates.FirstBondedOn);
    }

    [Fact]
    public void Taken_back_a_spare_that_was_worn_before_rests_again()
    {
        _head.Spare.PutOn(Head.BondedOn.PlusDays(-3));
        _head.Spare.TakeOff();
        var made = _head.Rebond(made: _head.NewBond(_head.Spare));

        Undo(made, _head.Spare, madeWasFirst: false);

        Assert.Equal(UnitState.Resting, _head.Spare.State);
        Assert.Equal(Head.BondedOn.PlusDays(-3), _head.Spare.Dates.FirstBondedOn);
    }

    [Fact]
    public void Taken_back_a_prepared_unit_is_prepared_again()
    {
        _head.Spare.Prepare(_head.Today);
        var made = _head.Rebond(made: _head.NewBond(_head.Spare));

        Undo(made, _head.Spare, madeWasFirst: true);

        Assert.Equal(UnitState.Prepared, _head.Spare.State);
        Assert.Null(_head.Spare.Dates.FirstBondedOn);
    }

    [Fact]
    public void Taken_back_an_emergency_spare_is_one_again()
    {
        _head.Spare.LeaveService(UnitState.EmergencySpare, _head.Today, "Thin at the front");
        var made = _head.Rebond(made: _head.NewBond(_head.Spare));

        Undo(made, _head.Spare, madeWasFirst: true);

        Assert.Equal(UnitState.EmergencySpare, _head.Spare.State);
    }

    /// <summary>An old book may know the unit on a head without the bonds it was worn with.</summary>
    [Fact]
    public void The_worn_unit_keeps_its_first_day_though_no_earlier_bond_is_known()
    {
        var made = _head.Rebond();

        Undo(made, _head.Worn, madeWasFirst: true);

        Assert.Equal((UnitState.Bonded, Head.BondedOn), (_head.Worn.State, _head.Worn.Dates.FirstBondedOn));
    }

    [Fact]
    public void A_unit_that_is_on_no_head_cannot_be_taken_back_from_one()
    {
        var made = _head.Rebond();

        var refusal = Assert.Throws<Refusal>(() => Undo(made, _head.Spare, madeWasFirst: true));

        Assert.Equal("Unit C-1-2 stands at “Accepted”: this cannot be done now. Open the unit to see what comes next.", refusal.Message);
        Assert.True(made.IsOpen);
    }

    [Fact]
    public void A_lift_told_only_in_the_wrong_log_goes_with_it_but_one_told_before_stays()
    {
        Undo(_head.Rebond(Head.Lifted(on: null)), _head.Worn, madeWasFirst: false);
        Assert.Null(_head.Bond.Lift);

        var earlier = new Lift(_head.Today.PlusDays(-3), null, LiftZone.Sides, SpotFixed: false);
        _head.Bond.ReportLift(earlier);
        Undo(_head.Rebond(Head.Lifted(on: null)), _head.Worn, madeWasFirst: false);
        Assert.Equal(earlier, _head.Bond.Lift);
    }

    [Fact]
    public void On_the_next_day_it_is_too_late()
    {
        var made = _head.Rebond();
        _head.At(29);

        Refused.Saying("A log can be taken back only on the day it was written.", () => Undo(made, _head.Worn, madeWasFirst: false));
        Assert.False(_head.Bond.IsOpen);
    }

    [Fact]
    public void Another_stylist_cannot_take_it_back_but_a_manager_can()
    {
        var made = _head.Rebond();

        Refused.Saying(
            "Only the one who logged it, or a manager, can take it back.",
            () => Undo(made, _head.Worn, madeWasFirst: false, by: Guid.CreateVersion7())
        );
        Undo(made, _head.Worn, madeWasFirst: false, by: Guid.CreateVersion7(), manager: true);
        Assert.True(_head.Bond.IsOpen);
    }

    [Fact]
    public void Once_the_new_bond_lifted_the_log_stands()
    {
        var made = _head.Rebond();
        made.ReportLift(new Lift(_head.Today, _head.Today, LiftZone.Front, SpotFixed: false));

        Refused.Saying(
            "Something was written about the new bond since. It can no longer be taken back.",
            () => Undo(made, _head.Worn, madeWasFirst: false)
        );
    }

    [Fact]
    public void A_bond_that_was_never_taken_off_is_not_put_back()
    {
        var (other, made) = (new Head(), _head.Rebond());

        Refused.Saying(
            "This bond was never taken off.",
            () =>
                _head.Visit.UndoRecord(
                    (made, _head.Worn),
                    madeWasFirst: false,
                    (other.Bond, other.Worn),
                    bondedSince: false,
                    _head.Salon,
                    _head.Now,
                    Head.Stylist,
                    mayCorrectOthers: false
                )
        );
    }

    [Fact]
    public void What_was_not_logged_is_not_taken_back() =>
        Refused.Saying(
            "This visit is not logged.",
            () => _head.Visit.UndoRecord(null, false, (_head.Bond, _head.Worn), false, _head.Salon, _head.Now, Head.Stylist, false)
        );

    [Fact]
    public void Taken_back_the_bond_counts_for_nothing_and_the_visit_has_its_client_again()
    {
        var made = _head.Rebond();

        Undo(made, _head.Worn, madeWasFirst: false);

        Assert.Equal((made.AppliedOn, RemovalReason.TakenBack), (made.RemovedOn, made.RemovedBecause));
        Assert.True(_head.Visit.HoldsClient);
    }

    private void Undo(Bond made, HairSystem unit, bool madeWasFirst, Guid? by = null, bool manager = false) =>
        _head.Visit.UndoRecord(
            (made, unit),
            madeWasFirst,
            (_head.Bond, _head.Worn),
            false,
            _head.Salon,
            _head.Now,
            by ?? Head.Stylist,
            manager
        );
}
