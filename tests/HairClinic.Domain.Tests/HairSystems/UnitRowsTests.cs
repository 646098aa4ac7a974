using HairClinic.Domain.HairSystems;
using NodaTime;

namespace HairClinic.Domain.Tests.HairSystems;

/// <summary>What bases, kinds and repairs take. Common practice, no source.</summary>
public sealed class UnitRowsTests
{
    private const string Life = "A base's life runs from at least one day to a longer one.";
    private const string Lead = "Half of the orders take at least one day, nine in ten take longer, and no more than 730 days.";
    private static readonly LocalDate Day = new(2027, 2, 3);

    [Fact]
    public void A_life_runs_from_a_day_to_a_longer_one()
    {
        var lace = new BaseMaterial(Guid.CreateVersion7(), " French lace ", 1, 2);
        Assert.Equal(("French lace", 1, 2, false), (lace.Name, lace.LifeFromDays, lace.LifeToDays, lace.Retired));

        foreach (var (from, to) in new[] { (0, 90), (90, 90), (90, 89) })
            Refused.Saying(Life, () => lace.Edit("Lace", from, to));
        lace.Retire();

        Assert.Equal(("French lace", 1, 2, true), (lace.Name, lace.LifeFromDays, lace.LifeToDays, lace.Retired));
    }

    [Fact]
    public void An_order_takes_a_day_or_more_and_two_years_at_most()
    {
        var (lace, north) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        var kind = new UnitKind(Guid.CreateVersion7(), " Everyday ", lace, north);
        Assert.Equal(("Everyday", lace, north), (kind.Name, kind.BaseMaterialId, kind.WorkshopId));

        kind.SetLeadTimes(1, 730);
        foreach (var (half, nine) in new[] { (0, 77), (56, 56), (56, 55), (56, 731) })
            Refused.Saying(Lead, () => kind.SetLeadTimes(half, nine));
        kind.Retire();

        Assert.Equal((1, 730, true), (kind.LeadHalfDays, kind.LeadNineInTenDays, kind.Retired));
    }

    [Theory]
    [InlineData(null, null)]
    [InlineData("", null)]
    [InlineData(" ", null)]
    [InlineData(" front edge ", "front edge")]
    public void A_repair_keeps_its_note_where_there_is_one(string? typed, string? kept)
    {
        var unit = Here(new UnitDates { SpecifiedOn = Day.PlusDays(-90), ArrivedOn = Day.PlusDays(-3) });

        unit.AddRepair(Guid.CreateVersion7(), Day.PlusDays(-3), RepairKind.NewFront, typed);

        Assert.Equal(kept, Assert.Single(unit.Repairs).Note);
    }

    [Fact]
    public void A_unit_is_repaired_from_the_day_it_was_here_which_its_arrival_tells_before_its_first_bond()
    {
        var told = Here(
            new UnitDates
            {
                SpecifiedOn = Day.PlusDays(-90),
                ArrivedOn = Day.PlusDays(-9),
                FirstBondedOn = Day.PlusDays(-5),
            }
        );
        var worn = Here(new UnitDates { SpecifiedOn = Day.PlusDays(-90), FirstBondedOn = Day.PlusDays(-5) });

        told.AddRepair(Guid.CreateVersion7(), Day.PlusDays(-9), RepairKind.NewFront, null);
        Refused.Saying(
            "Unit {0} was not here yet on {1}.",
            () => told.AddRepair(Guid.CreateVersion7(), Day.PlusDays(-10), RepairKind.NewFront, null)
        );
        Refused.Saying(
            "Unit {0} was not here yet on {1}.",
            () => worn.AddRepair(Guid.CreateVersion7(), Day.PlusDays(-6), RepairKind.NewFront, null)
        );
    }

    [Theory]
    [InlineData("ordered", "acknowledged")]
    [InlineData("arrived", "inspected")]
    [InlineData("inspected", "accepted")]
    [InlineData("accepted", "prepared")]
    [InlineData("prepared", "first bonded")]
    public void Steps_out_of_order_are_named(string earlier, string later)
    {
        var dates = new Dictionary<string, Func<UnitDates, LocalDate, UnitDates>>
        {
            ["ordered"] = (d, on) => d with { OrderedOn = on },
            ["acknowledged"] = (d, on) => d with { AcknowledgedOn = on },
            ["arrived"] = (d, on) => d with { ArrivedOn = on },
            ["inspected"] = (d, on) => d with { InspectedOn = on },
            ["accepted"] = (d, on) => d with { AcceptedOn = on },
            ["prepared"] = (d, on) => d with { PreparedOn = on },
            ["first bonded"] = (d, on) => d with { FirstBondedOn = on },
        };

        var disorder = dates[later]
            (dates[earlier](new UnitDates { SpecifiedOn = Day.PlusDays(-90) }, Day), Day.PlusDays(-1))
            .FirstDisorder();

        Assert.Equal((earlier, later), disorder);
    }

    [Fact]
    public void The_last_step_that_is_dated_says_how_far_a_unit_got()
    {
        (UnitState State, Func<UnitDates, UnitDates> Date)[] steps =
        [
            (UnitState.Specified, d => d with { SpecifiedOn = Day }),
            (UnitState.Ordered, d => d with { OrderedOn = Day }),
            (UnitState.Acknowledged, d => d with { AcknowledgedOn = Day }),
            (UnitState.Shipped, d => d with { ShippedOn = Day }),
            (UnitState.Arrived, d => d with { ArrivedOn = Day }),
            (UnitState.Inspected, d => d with { InspectedOn = Day }),
            (UnitState.Accepted, d => d with { AcceptedOn = Day }),
            (UnitState.Prepared, d => d with { PreparedOn = Day }),
            (UnitState.Resting, d => d with { FirstBondedOn = Day }),
            (UnitState.Retired, d => d with { RetiredOn = Day }),
        ];
        var dates = new UnitDates();

        Assert.All(steps, step => Assert.Equal(step.State, (dates = step.Date(dates)).LastDatedState()));
    }

    private static HairSystem Here(UnitDates dates)
    {
        var unit = new HairSystem(Guid.CreateVersion7(), "U-1", Guid.CreateVersion7(), Guid.CreateVersion7(), Day.PlusDays(-90));
        unit.ImportState(UnitState.Resting, dates, null);
        return unit;
    }
}
