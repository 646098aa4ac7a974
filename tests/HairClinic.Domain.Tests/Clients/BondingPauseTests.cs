using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using NodaTime;

namespace HairClinic.Domain.Tests.Clients;

/// <summary>When a bond may be made around an operation, a scan or a treatment: common practice, no source.</summary>
public sealed class BondingPauseTests
{
    private static readonly LocalDate Day = new(2027, 3, 10);
    private static readonly Guid Mara = Guid.CreateVersion7();

    [Theory]
    [InlineData(-6, null)]
    [InlineData(-5, null)]
    [InlineData(-4, BondingPauseDegree.Soon)]
    [InlineData(-2, BondingPauseDegree.Soon)]
    [InlineData(-1, BondingPauseDegree.Eve)]
    [InlineData(0, BondingPauseDegree.Begun)]
    [InlineData(3, BondingPauseDegree.Begun)]
    [InlineData(400, BondingPauseDegree.Begun)] // long over, and nobody has said so
    public void An_operation_keeps_from_bonding_from_the_day_before_until_somebody_says_so(int days, BondingPauseDegree? degree) =>
        Assert.Equal(degree, On(Day.PlusDays(days), Planned(LifeEventKind.Operation))?.Degree);

    [Theory]
    [InlineData(LifeEventKind.Operation, true)]
    [InlineData(LifeEventKind.Scan, true)]
    [InlineData(LifeEventKind.Treatment, true)]
    [InlineData(LifeEventKind.Celebration, false)]
    [InlineData(LifeEventKind.Travel, false)]
    [InlineData(LifeEventKind.Other, false)]
    public void Only_what_the_unit_has_to_be_off_for_keeps_from_bonding(LifeEventKind kind, bool keeps)
    {
        Assert.Equal(keeps, On(Day, Planned(kind)) is not null);
        Assert.Equal(keeps, On(Day.PlusDays(-1), Planned(kind)) is not null);
    }

    [Theory]
    [InlineData(ServicePurpose.Rebond, true)]
    [InlineData(ServicePurpose.FirstFitting, true)]
    [InlineData(ServicePurpose.FixLift, true)]
    [InlineData(ServicePurpose.WashAndStyle, false)]
    [InlineData(ServicePurpose.Consultation, false)]
    [InlineData(ServicePurpose.Other, false)]
    public void A_service_that_bonds_nothing_is_none_of_its_business(ServicePurpose purpose, bool concerned) =>
        Assert.Equal(concerned, BondingPause.On([Planned(LifeEventKind.Scan)], purpose, Day, daysBeforeEvent: 5) is not null);

    [Fact]
    public void From_the_day_that_was_recorded_on_bonds_are_made_again()
    {
        var scan = Planned(LifeEventKind.Scan);
        scan.AllowBondingAgain(Day.PlusDays(2), Mara);

        Assert.Equal((Day.PlusDays(2), Mara), (scan.BondingAgainFrom, scan.BondingAgainBy));
        Assert.Equal(BondingPauseDegree.Begun, On(Day.PlusDays(1), scan)?.Degree);
        Assert.Null(On(Day.PlusDays(2), scan));
        // That it begins again is no reason to bond on the eve.
        Assert.Equal(BondingPauseDegree.Eve, On(Day.PlusDays(-1), scan)?.Degree);

        scan.AllowBondingAgain(Day.PlusDays(9), Mara);
        Assert.NotNull(On(Day.PlusDays(8), scan));
    }

    [Fact]
    public void Of_several_the_one_that_speaks_most_against_it_counts()
    {
        var later = new LifeEvent(Guid.CreateVersion7(), Mara, LifeEventKind.Scan, Day.PlusDays(3), Day.PlusDays(3), away: false);

        Assert.Equal(new BondingPause(BondingPauseDegree.Begun, Day), On(Day, later, Planned(LifeEventKind.Operation)));
        Assert.Equal(new BondingPause(BondingPauseDegree.Soon, later.From), On(Day, later));
        Assert.Null(On(Day));
    }

    [Fact]
    public void A_practice_that_wants_more_days_is_asked_on_more_of_them()
    {
        Assert.Equal(BondingPauseDegree.Soon, BondingPause.On([Planned(LifeEventKind.Scan)], Day.PlusDays(-9), 10)?.Degree);
        Assert.Null(BondingPause.On([Planned(LifeEventKind.Scan)], Day.PlusDays(-10), 10));
    }

    [Fact]
    public void Bonding_begins_again_on_the_first_day_of_it_at_the_earliest()
    {
        Refused.Saying(
            "Bonding cannot begin again before the event has begun, on {0}.",
            () => Planned(LifeEventKind.Treatment).AllowBondingAgain(Day.PlusDays(-1), Mara)
        );
        var treatment = Planned(LifeEventKind.Treatment);
        treatment.AllowBondingAgain(Day, Mara);
        Assert.Null(On(Day, treatment));
    }

    [Fact]
    public void Nothing_begins_again_after_a_wedding() =>
        Refused.Saying("This event does not keep from bonding.", () => Planned(LifeEventKind.Celebration).AllowBondingAgain(Day, Mara));

    [Theory]
    [InlineData(BondingPauseDegree.Begun, true, "No bond for this client since {0}, until somebody allows bonding again.")]
    [InlineData(BondingPauseDegree.Eve, true, "No bond any more: the unit has to be off before {0}.")]
    [InlineData(
        BondingPauseDegree.Soon,
        false,
        "This bond would have to come off again before {0}. Say that it is wanted all the same, or do not bond."
    )]
    public void A_bond_is_refused_and_only_shortly_before_it_may_be_wanted(BondingPauseDegree degree, bool wanted, string sentence) =>
        Refused.Saying(sentence, () => new BondingPause(degree, Day).RequireBondable(wanted));

    [Fact]
    public void One_that_comes_off_soon_is_made_for_whoever_wants_it() =>
        new BondingPause(BondingPauseDegree.Soon, Day).RequireBondable(wanted: true);

    private static BondingPause? On(LocalDate day, params LifeEvent[] events) => BondingPause.On(events, day, daysBeforeEvent: 5);

    private static LifeEvent Planned(LifeEventKind kind) => new(Guid.CreateVersion7(), Mara, kind, Day, Day.PlusDays(4), away: false);
}
