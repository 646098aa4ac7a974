using HairClinic.Domain.Bonding;
using HairClinic.Domain.Chairs;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using NodaTime;

namespace HairClinic.Domain.Tests.Visits;

public sealed class RecordRebondTests
{
    private readonly Head _head = new();

    [Fact]
    public void The_old_bond_comes_off_the_same_unit_goes_on_and_the_new_bond_says_when_it_is_due_and_why()
    {
        var bond = _head.Rebond();

        Assert.Equal((_head.Today, RemovalReason.Scheduled), (_head.Bond.RemovedOn, _head.Bond.RemovedBecause));
        Assert.Equal((_head.Worn.Id, _head.Today, _head.Now), (bond.HairSystemId, bond.AppliedOn, bond.AppliedAt));
        Assert.Equal(UnitState.Bonded, _head.Worn.State);
        Assert.Equal(_head.Today.PlusWeeks(4), bond.OpensOn);
        Assert.NotEmpty(bond.DueReasons);
        Assert.Equal(VisitState.Done, _head.Visit.State);
        Assert.Equal(_head.Worn.Id, _head.Visit.Record!.RemovedUnitId);
    }

    [Fact]
    public void A_day_that_has_not_come_takes_no_rebond()
    {
        Booked.Place(_head.Visit, _head.Now + Duration.FromDays(1), (SegmentKind.HandsOn, 60));

        Assert.StartsWith("This visit is on ", Assert.Throws<Refusal>(() => _head.Rebond()).Message, StringComparison.Ordinal);

        Assert.True(_head.Bond.IsOpen);
        Assert.Equal(UnitState.Bonded, _head.Worn.State);
    }

    [Fact]
    public void The_spare_goes_on_and_the_worn_unit_rests()
    {
        _head.Rebond(made: _head.NewBond(_head.Spare));

        Assert.Equal((UnitState.Resting, UnitState.Bonded), (_head.Worn.State, _head.Spare.State));
        Assert.Equal(_head.Today, _head.Spare.Dates.FirstBondedOn);
    }

    [Fact]
    public void A_first_fitting_takes_nothing_off()
    {
        var bond = _head.Visit.RecordRebond(
            Guid.CreateVersion7(),
            worn: null,
            _head.NewBond(_head.Spare),
            _head.Salon,
            Head.FourToEight(_head.Today),
            _head.Now,
            Head.Stylist,
            "First fitting"
        );

        Assert.Equal(_head.Spare.Id, bond.HairSystemId);
        Assert.Null(_head.Visit.Record!.RemovedUnitId);
        Assert.Equal(InspectionGrades.NotLookedAt, _head.Visit.Record.Grades);
        Assert.False(_head.Visit.Record.FoundLifted);
    }

    [Fact]
    public void A_bond_that_was_due_but_found_lifted_came_off_because_it_lifted()
    {
        _head.Rebond(Head.Lifted(_head.Today.PlusDays(-2)));

        Assert.Equal(RemovalReason.Lifted, _head.Bond.RemovedBecause);
        Assert.Equal(new Lift(_head.Today, _head.Today.PlusDays(-2), LiftZone.Front, SpotFixed: false), _head.Bond.Lift);
    }

    [Fact]
    public void A_lift_found_when_it_comes_off_for_a_reaction_keeps_both()
    {
        _head.Rebond(Head.Lifted(on: null) with { Because = RemovalReason.Reaction });

        Assert.Equal(RemovalReason.Reaction, _head.Bond.RemovedBecause);
        Assert.NotNull(_head.Bond.Lift);
    }

    [Fact]
    public void The_day_of_a_bond_is_the_salons_not_that_of_the_machine()
    {
        _head.Salon.Edit("Elm Row", "Pacific/Auckland", "NZD", null, null);

        var bond = _head.Rebond();

        // Eleven in the morning in London is midnight in Auckland's summer: the next day has begun.
        Assert.Equal(Head.BondedOn.PlusDays(29), bond.AppliedOn);
    }

    [Fact]
    public void A_visit_is_logged_once()
    {
        _head.Rebond();

        Assert.Equal("This visit is logged already.", Assert.Throws<Refusal>(() => _head.Rebond()).Message);
    }

    [Fact]
    public void A_visit_that_was_called_off_cannot_be_logged()
    {
        _head.Visit.Cancel();

        Refused.Saying("This visit is {0} already.", () => _head.Rebond());
        Assert.True(_head.Bond.IsOpen);
    }

    [Fact]
    public void An_unfit_unit_is_not_bonded_again_unless_an_emergency_is_confirmed()
    {
        var unfit = Head.Sound(grades: InspectionGrades.AsNew with { Knots = 4 });

        Refused.Saying("Unit {0} is unfit. Bond the spare, or confirm that this is an emergency.", () => _head.Rebond(unfit));
        Assert.Null(_head.Visit.Record);
        Assert.True(_head.Bond.IsOpen);
        Assert.True(_head.Rebond(unfit, _head.NewBond(emergency: true)).IsOpen);
    }

    [Fact]
    public void An_unfit_unit_may_come_off_and_the_spare_go_on() =>
        Assert.True(_head.Rebond(Head.Sound(grades: InspectionGrades.AsNew with { Base = 4 }), _head.NewBond(_head.Spare)).IsOpen);

    [Fact]
    public void Worn_hair_or_colour_alone_makes_no_unit_unfit() =>
        Assert.True(_head.Rebond(Head.Sound(grades: InspectionGrades.AsNew with { Hair = 4, Colour = 4 })).IsOpen);

    [Fact]
    public void A_bond_is_not_finished_in_the_future() =>
        Refused.Saying(
            "The bond cannot have been finished later than now.",
            () => _head.Rebond(made: _head.NewBond() with { AppliedAt = _head.Now + Duration.FromMinutes(6) })
        );

    [Fact]
    public void Another_clients_unit_is_not_bonded_on_this_head()
    {
        _head.Spare.AssignToClient(Guid.CreateVersion7());

        Refused.Saying("Unit {0} is another client's.", () => _head.Rebond(made: _head.NewBond(_head.Spare)));
    }

    [Fact]
    public void A_unit_that_is_still_at_the_workshop_is_not_bonded()
    {
        var ordered = new HairSystem(Guid.CreateVersion7(), "C-1-3", _head.Client.Id, Guid.CreateVersion7(), Head.BondedOn);

        Refused.Saying("Unit {0} is {1}: it cannot be bonded.", () => _head.Rebond(made: _head.NewBond(ordered)));
        Assert.True(_head.Bond.IsOpen);
    }

    [Fact]
    public void The_bond_tells_its_visit_its_products_with_their_lots_and_whose_hands_made_it()
    {
        var lot = Guid.CreateVersion7();
        var use = new AppliedProduct(Head.Adhesive, lot, 2);

        var bond = _head.Rebond(made: _head.NewBond() with { Products = [(Guid.CreateVersion7(), use)], WaitsKept = false });

        Assert.Equal(_head.Visit.Id, bond.VisitId);
        var product = Assert.Single(bond.Products);
        Assert.Equal((Head.Adhesive, lot, 2), (product.ProductId, product.LotId, product.Coats));
        Assert.Equal((false, false), (bond.WaitsKept, _head.Visit.Record!.WaitsKept));
        Assert.Equal(Head.Stylist, bond.AppliedBy);
    }

    [Fact]
    public void Whose_visit_it_was_made_the_bond_whoever_wrote_it_down()
    {
        Booked.Place(_head.Visit, _head.Now, (SegmentKind.HandsOn, 60));

        var bond = _head.Rebond();

        Assert.NotEqual(Head.Stylist, _head.Visit.PersonId);
        Assert.Equal((_head.Visit.PersonId, Head.Stylist), (bond.AppliedBy, _head.Visit.Record!.RecordedBy));
    }

    [Fact]
    public void The_record_tells_what_was_found()
    {
        var grades = InspectionGrades.AsNew with { Fit = 2, Hair = 3 };

        _head.Rebond(Head.Lifted(_head.Today.PlusDays(-2)) with { Grades = grades });

        var record = _head.Visit.Record!;
        Assert.Equal(grades, record.Grades);
        Assert.Equal((true, _head.Today.PlusDays(-2), LiftZone.Front), (record.FoundLifted, record.LiftedOn, record.LiftZone));
    }

    [Theory]
    [InlineData(" Edges thin at the nape. ", "Edges thin at the nape.")]
    [InlineData("  ", null)]
    [InlineData(null, null)]
    public void A_note_is_kept_without_the_spaces_around_it(string? typed, string? kept)
    {
        _head.Visit.RecordCare(Guid.CreateVersion7(), _head.Bond, null, _head.Salon, _head.Now, Head.Stylist, typed);

        Assert.Equal(kept, _head.Visit.Record!.Note);
    }
}
