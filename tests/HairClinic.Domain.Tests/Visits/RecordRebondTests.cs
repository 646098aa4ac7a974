using HairClinic.Domain.Bonding;
using HairClinic.Domain.Chairs;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using NodaTime;

namespace HairClinic.Domain.Tests.Visits;

public sealed class RecordRebondTests
{
    private readonly Head head = new();

    [Fact]
    public void The_old_bond_comes_off_the_same_unit_goes_on_and_the_new_bond_says_when_it_is_due_and_why()
    {
        var bond = head.Rebond();

        Assert.Equal((head.Today, RemovalReason.Scheduled), (head.Bond.RemovedOn, head.Bond.RemovedBecause));
        Assert.Equal((head.Worn.Id, head.Today, head.Now), (bond.HairSystemId, bond.AppliedOn, bond.AppliedAt));
        Assert.Equal(UnitState.Bonded, head.Worn.State);
        Assert.Equal(head.Today.PlusWeeks(4), bond.OpensOn);
        Assert.NotEmpty(bond.DueReasons);
        Assert.Equal(VisitState.Done, head.Visit.State);
        Assert.Equal(head.Worn.Id, head.Visit.Record!.RemovedUnitId);
    }

    [Fact]
    public void A_day_that_has_not_come_takes_no_rebond()
    {
        Booked.Place(head.Visit, head.Now + Duration.FromDays(1), (SegmentKind.HandsOn, 60));

        Assert.StartsWith("This visit is on ", Assert.Throws<Refusal>(() => head.Rebond()).Message, StringComparison.Ordinal);

        Assert.True(head.Bond.IsOpen);
        Assert.Equal(UnitState.Bonded, head.Worn.State);
    }

    [Fact]
    public void The_spare_goes_on_and_the_worn_unit_rests()
    {
        head.Rebond(made: head.NewBond(head.Spare));

        Assert.Equal((UnitState.Resting, UnitState.Bonded), (head.Worn.State, head.Spare.State));
        Assert.Equal(head.Today, head.Spare.Dates.FirstBondedOn);
    }

    [Fact]
    public void A_first_fitting_takes_nothing_off()
    {
        var bond = head.Visit.RecordRebond(
            Guid.CreateVersion7(),
            worn: null,
            head.NewBond(head.Spare),
            head.Salon,
            Head.FourToEight(head.Today),
            head.Now,
            Head.Stylist,
            "First fitting"
        );

        Assert.Equal(head.Spare.Id, bond.HairSystemId);
        Assert.Null(head.Visit.Record!.RemovedUnitId);
        Assert.Equal(InspectionGrades.NotLookedAt, head.Visit.Record.Grades);
        Assert.False(head.Visit.Record.FoundLifted);
    }

    [Fact]
    public void A_bond_that_was_due_but_found_lifted_came_off_because_it_lifted()
    {
        head.Rebond(Head.Lifted(head.Today.PlusDays(-2)));

        Assert.Equal(RemovalReason.Lifted, head.Bond.RemovedBecause);
        Assert.Equal(new Lift(head.Today, head.Today.PlusDays(-2), LiftZone.Front, SpotFixed: false), head.Bond.Lift);
    }

    [Fact]
    public void A_lift_found_when_it_comes_off_for_a_reaction_keeps_both()
    {
        head.Rebond(Head.Lifted(on: null) with { Because = RemovalReason.Reaction });

        Assert.Equal(RemovalReason.Reaction, head.Bond.RemovedBecause);
        Assert.NotNull(head.Bond.Lift);
    }

    [Fact]
    public void The_day_of_a_bond_is_the_salons_not_that_of_the_machine()
    {
        head.Salon.Edit("Elm Row", "Pacific/Auckland", "NZD", null, null);

        var bond = head.Rebond();

        // Eleven in the morning in London is midnight in Auckland's summer: the next day has begun.
        Assert.Equal(Head.BondedOn.PlusDays(29), bond.AppliedOn);
    }

    [Fact]
    public void A_visit_is_logged_once()
    {
        head.Rebond();

        Assert.Equal("This visit is logged already.", Assert.Throws<Refusal>(() => head.Rebond()).Message);
    }

    [Fact]
    public void A_visit_that_was_called_off_cannot_be_logged()
    {
        head.Visit.Cancel();

        Refused.Saying("This visit is {0} already.", () => head.Rebond());
        Assert.True(head.Bond.IsOpen);
    }

    [Fact]
    public void An_unfit_unit_is_not_bonded_again_unless_an_emergency_is_confirmed()
    {
        var unfit = Head.Sound(grades: InspectionGrades.AsNew with { Knots = 4 });

        Refused.Saying("Unit {0} is unfit. Bond the spare, or confirm that this is an emergency.", () => head.Rebond(unfit));
        Assert.Null(head.Visit.Record);
        Assert.True(head.Bond.IsOpen);
        Assert.True(head.Rebond(unfit, head.NewBond(emergency: true)).IsOpen);
    }

    [Fact]
    public void An_unfit_unit_may_come_off_and_the_spare_go_on() =>
        Assert.True(head.Rebond(Head.Sound(grades: InspectionGrades.AsNew with { Base = 4 }), head.NewBond(head.Spare)).IsOpen);

    [Fact]
    public void Worn_hair_or_colour_alone_makes_no_unit_unfit() =>
        Assert.True(head.Rebond(Head.Sound(grades: InspectionGrades.AsNew with { Hair = 4, Colour = 4 })).IsOpen);

    [Fact]
    public void A_bond_is_not_finished_in_the_future() =>
        Refused.Saying(
            "The bond cannot have been finished later than now.",
            () => head.Rebond(made: head.NewBond() with { AppliedAt = head.Now + Duration.FromMinutes(6) })
        );

    [Fact]
    public void Another_clients_unit_is_not_bonded_on_this_head()
    {
        head.Spare.BelongToClient(Guid.CreateVersion7());

        Refused.Saying("Unit {0} is another client's.", () => head.Rebond(made: head.NewBond(head.Spare)));
    }

    [Fact]
    public void A_unit_that_is_still_at_the_workshop_is_not_bonded()
    {
        var ordered = new HairSystem(Guid.CreateVersion7(), "C-1-3", head.Client.Id, Guid.CreateVersion7(), Head.BondedOn);

        Refused.Saying("Unit {0} is {1}: it cannot be bonded.", () => head.Rebond(made: head.NewBond(ordered)));
        Assert.True(head.Bond.IsOpen);
    }

    [Fact]
    public void The_bond_tells_its_visit_its_products_with_their_lots_and_whose_hands_made_it()
    {
        var lot = Guid.CreateVersion7();
        var use = new ProductUse(Head.Adhesive, lot, 2);

        var bond = head.Rebond(made: head.NewBond() with { Products = [(Guid.CreateVersion7(), use)], WaitsKept = false });

        Assert.Equal(head.Visit.Id, bond.VisitId);
        var product = Assert.Single(bond.Products);
        Assert.Equal((Head.Adhesive, lot, 2), (product.ProductId, product.LotId, product.Coats));
        Assert.Equal((false, false), (bond.WaitsKept, head.Visit.Record!.WaitsKept));
        Assert.Equal(Head.Stylist, bond.AppliedBy);
    }

    [Fact]
    public void Whose_visit_it_was_made_the_bond_whoever_wrote_it_down()
    {
        Booked.Place(head.Visit, head.Now, (SegmentKind.HandsOn, 60));

        var bond = head.Rebond();

        Assert.NotEqual(Head.Stylist, head.Visit.PersonId);
        Assert.Equal((head.Visit.PersonId, Head.Stylist), (bond.AppliedBy, head.Visit.Record!.RecordedBy));
    }

    [Fact]
    public void The_record_tells_what_was_found()
    {
        var grades = InspectionGrades.AsNew with { Fit = 2, Hair = 3 };

        head.Rebond(Head.Lifted(head.Today.PlusDays(-2)) with { Grades = grades });

        var record = head.Visit.Record!;
        Assert.Equal(grades, record.Grades);
        Assert.Equal((true, head.Today.PlusDays(-2), LiftZone.Front), (record.FoundLifted, record.LiftedOn, record.LiftZone));
    }

    [Theory]
    [InlineData(" Edges thin at the nape. ", "Edges thin at the nape.")]
    [InlineData("  ", null)]
    [InlineData(null, null)]
    public void A_note_is_kept_without_the_spaces_around_it(string? typed, string? kept)
    {
        head.Visit.RecordCare(Guid.CreateVersion7(), head.Bond, null, head.Salon, head.Now, Head.Stylist, typed);

        Assert.Equal(kept, head.Visit.Record!.Note);
    }
}
