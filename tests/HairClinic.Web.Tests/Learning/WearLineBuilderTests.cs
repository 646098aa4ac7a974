using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Wear;
using HairClinic.Web.Learning;
using NodaTime;

namespace HairClinic.Web.Tests.Learning;

public sealed class WearLineBuilderTests
{
    private static readonly LocalDate Today = new(2027, 2, 3);

    [Fact]
    public void A_unit_on_order_is_dotted_to_when_it_will_be_here_and_not_to_a_promise_that_may_be_past()
    {
        var unit = Unit("S-2", UnitState.Ordered, new UnitDates { OrderedOn = Today.PlusWeeks(-4) });
        unit.Unit.AddDeliveryPromise(Guid.CreateVersion7(), Today.PlusWeeks(-1), Today.PlusWeeks(-4));
        var (early, late) = (Today.PlusWeeks(1), Today.PlusWeeks(4));
        var ahead = WearLineForecast.Unknown with
        {
            Arrivals = new Dictionary<Guid, (LocalDate, LocalDate)> { [unit.Unit.Id] = (early, late) },
        };

        var lane = Assert.Single(WearLineBuilder.Build([unit], [], [], Today, ahead).Lanes);

        Assert.Equal((early, late, null), (lane.PromisedFrom, lane.PromisedTo, lane.Arrived));
        Assert.Null(Assert.Single(Draw([unit], []).Lanes).PromisedTo);
    }

    [Fact]
    public void A_remake_is_on_order_again_although_it_arrived_once()
    {
        var unit = Unit("S-2", UnitState.Remake, new UnitDates { OrderedOn = Today.PlusWeeks(-12), ArrivedOn = Today.PlusWeeks(-2) });

        Assert.Null(Assert.Single(Draw([unit], []).Lanes).Arrived);
    }

    [Fact]
    public void A_lift_whose_day_nobody_knows_is_drawn_where_it_was_reported()
    {
        var unit = Unit("S-1", UnitState.Bonded, new UnitDates { ArrivedOn = Today.PlusWeeks(-8) });
        var bond = Bond(unit, Today.PlusDays(-20));
        bond.ReportLift(new Lift(Today.PlusDays(-1), LiftedOn: null, Zone: null, SpotFixed: true));

        var drawn = Assert.Single(Assert.Single(Draw([unit], [bond]).Lanes).Bonds);

        Assert.Equal((Today.PlusDays(-1), null), (drawn.LiftedOn, drawn.RemovedOn));
    }

    [Fact]
    public void What_was_only_specified_is_not_drawn() =>
        Assert.Empty(Draw([Unit("S-9", UnitState.Specified, new UnitDates { SpecifiedOn = Today })], []).Lanes);

    [Fact]
    public void An_old_book_without_an_arrival_draws_the_unit_from_its_first_bond()
    {
        var unit = Unit("S-1", UnitState.Bonded, new UnitDates());

        var line = Draw([unit], [Bond(unit, Today.PlusWeeks(-3))]);

        Assert.Equal(Today.PlusWeeks(-3), Assert.Single(line.Lanes).Arrived);
    }

    [Fact]
    public void Of_many_units_those_not_gone_stay_and_the_newest_gone_ones_fill_up()
    {
        var gone = Enumerable
            .Range(1, 8)
            .Select(i =>
                Unit(
                    $"G-{i}",
                    UnitState.Retired,
                    new UnitDates { ArrivedOn = Today.PlusDays(-300 + i), RetiredOn = Today.PlusDays(-250 + i) }
                )
            );
        var spare = Unit("OLD-SPARE", UnitState.EmergencySpare, new UnitDates { ArrivedOn = Today.PlusYears(-2) });

        var line = Draw([.. gone, spare], []);

        Assert.Equal(WearLineBuilder.MostLanes, line.Lanes.Count);
        Assert.Equal(["OLD-SPARE", "G-4", "G-5", "G-6", "G-7", "G-8"], line.Lanes.Select(lane => lane.Serial));
    }

    [Fact]
    public void The_line_reaches_a_year_back_at_most_and_past_everything_that_is_ahead()
    {
        var unit = Unit("S-1", UnitState.Bonded, new UnitDates { OrderedOn = Today.PlusYears(-3), ArrivedOn = Today.PlusYears(-3) });

        var line = WearLineBuilder.Build(
            [unit],
            [Bond(unit, Today.PlusWeeks(-3))],
            [new WearLineVisit(Today.PlusWeeks(20), "Rebond")],
            Today,
            WearLineForecast.Unknown
        );

        Assert.Equal((Today.PlusMonths(-12), Today.PlusWeeks(21)), (line.From, line.To));
    }

    private static WearLineData Draw(IReadOnlyCollection<UnitWithKindName> units, IReadOnlyCollection<Bond> bonds) =>
        WearLineBuilder.Build(units, bonds, [], Today, WearLineForecast.Unknown);

    private static UnitWithKindName Unit(string serial, UnitState state, UnitDates dates)
    {
        var unit = new HairSystem(Guid.CreateVersion7(), serial, Guid.CreateVersion7(), Guid.CreateVersion7(), dates.SpecifiedOn);
        unit.ImportState(state, dates, retiredBecause: null);
        return new UnitWithKindName(unit, "Lace");
    }

    private static Bond Bond(UnitWithKindName unit, LocalDate on) =>
        new(Guid.CreateVersion7(), unit.Unit.Id, unit.Unit.ClientId!.Value, on, appliedAt: null, Attachment.Liquid, appliedBy: null);
}
