using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using NodaTime;

namespace HairClinic.Domain.Tests.HairSystems;

/// <summary>What becomes of each unit when its client needs none any more. Common practice, no source.</summary>
public sealed class UnitAfterNeedTests
{
    private static readonly LocalDate Today = new(2027, 2, 3);

    public static TheoryData<UnitState, UnitAfterNeed, UnitState> Ways =>
        new()
        {
            { UnitState.Ordered, UnitAfterNeed.CalledOff, UnitState.Cancelled },
            { UnitState.Remake, UnitAfterNeed.CalledOff, UnitState.Cancelled },
            { UnitState.Acknowledged, UnitAfterNeed.LetCome, UnitState.Acknowledged },
            { UnitState.Arrived, UnitAfterNeed.GivenBack, UnitState.ReturnedToClient },
            { UnitState.Accepted, UnitAfterNeed.KeptAsSpare, UnitState.EmergencySpare },
            { UnitState.EmergencySpare, UnitAfterNeed.KeptAsSpare, UnitState.EmergencySpare },
            { UnitState.Resting, UnitAfterNeed.Destroyed, UnitState.Retired },
            { UnitState.Resting, UnitAfterNeed.GivenForTraining, UnitState.Retired },
            { UnitState.Prepared, UnitAfterNeed.DecidedLater, UnitState.Prepared },
        };

    [Theory]
    [MemberData(nameof(Ways))]
    public void Each_choice_is_a_step_of_the_unit_or_leaves_it_as_it_is(UnitState from, UnitAfterNeed after, UnitState to)
    {
        var unit = In(from);

        var step = End(unit, after);

        Assert.Equal((to, from != to), (unit.State, step is not null));
        if (step is not null)
            Assert.Equal((from, to, "end of need"), (step.Before.State, step.After.State, unit.RetiredBecause));
    }

    [Fact]
    public void A_draft_is_dropped_unasked_and_what_is_on_its_way_away_or_gone_stays()
    {
        var draft = In(UnitState.Specified);
        Assert.Equal(UnitStepKind.Cancelled, End(draft, after: null)!.Kind);
        Assert.Equal(UnitState.Cancelled, draft.State);

        foreach (var state in new[] { UnitState.Shipped, UnitState.Away, UnitState.Retired, UnitState.Lost })
            Assert.Null(End(In(state), after: null));
    }

    [Fact]
    public void What_somebody_wore_who_died_stays_with_them_and_one_of_the_stock_is_lent_as_before()
    {
        var own = In(UnitState.Bonded);
        var entry = new UnitStepEntry(Guid.CreateVersion7(), Today, Instant.FromUtc(2027, 2, 3, 9, 0), By: null);

        Assert.Equal(UnitStepKind.ReturnedToClient, own.StayWithWearer("needs no more units", Today, entry)!.Kind);
        Assert.Equal((UnitState.ReturnedToClient, (LocalDate?)Today, UnitPlace.Client), (own.State, own.Dates.RetiredOn, own.Place));

        var stock = new HairSystem(Guid.CreateVersion7(), "S-1", null, Guid.CreateVersion7(), Today);
        stock.ImportState(UnitState.Bonded, new UnitDates { FirstBondedOn = Today.PlusDays(-9) }, null);
        Assert.Null(stock.StayWithWearer("needs no more units", Today, entry));
        Assert.Equal((UnitState.Lent, UnitPlace.Client), (stock.State, stock.Place));
        Refused.Saying(
            "Unit {0} stands at “{1}”: this cannot be done now. Open the unit to see what comes next.",
            () => stock.StayWithWearer("needs no more units", Today, entry)
        );
    }

    [Fact]
    public void Nothing_goes_unsaid_and_nothing_is_done_that_was_not_offered()
    {
        Refused.Saying("Say what becomes of unit {0}.", () => End(In(UnitState.Resting), after: null));
        Refused.Saying(
            "Unit {0} is {1}: this cannot become of it. Open the page again.",
            () => End(In(UnitState.Ordered), UnitAfterNeed.Destroyed)
        );
        Refused.Saying(
            "Unit {0} is {1}: this cannot become of it. Open the page again.",
            () => End(In(UnitState.Resting), UnitAfterNeed.KeptAsSpare, NeedEnd.Died)
        );
    }

    [Fact]
    public void It_is_given_for_training_only_by_their_consent()
    {
        var unit = In(UnitState.Resting);

        Refused.Saying(
            "Unit {0} is not given for training: the client has not agreed to that.",
            () => End(unit, UnitAfterNeed.GivenForTraining, agreed: false)
        );

        Assert.Equal((UnitState.Resting, 0), (unit.State, unit.Steps.Count));
    }

    private static UnitStep? End(HairSystem unit, UnitAfterNeed? after, NeedEnd need = NeedEnd.Other, bool agreed = true) =>
        unit.EndNeed(
            after,
            need,
            agreed,
            "end of need",
            Today,
            new UnitStepEntry(Guid.CreateVersion7(), Today, Instant.FromUtc(2027, 2, 3, 9, 0), By: null)
        );

    private static HairSystem In(UnitState state)
    {
        var unit = new HairSystem(Guid.CreateVersion7(), "U-1", Guid.CreateVersion7(), Guid.CreateVersion7(), Today.PlusDays(-90));
        unit.ImportState(state, new UnitDates { SpecifiedOn = Today.PlusDays(-90), OrderedOn = Today.PlusDays(-80) }, null);
        return unit;
    }
}
