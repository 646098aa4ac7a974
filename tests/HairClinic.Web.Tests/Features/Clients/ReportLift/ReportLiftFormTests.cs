using Bunit;
using HairClinic.Domain.Bonding;
using HairClinic.Domain.Wear;
using HairClinic.Web.Features.Clients;
using HairClinic.Web.Tests.Ui;
using NodaTime;
using Slice = HairClinic.Web.Features.Clients.ReportLift;

namespace HairClinic.Web.Tests.Features.Clients.ReportLift;

public sealed class ReportLiftFormTests : UiTestContext
{
    private static readonly LocalDate Today = new(2027, 2, 3);
    private readonly Slice.Input _input = new();

    public ReportLiftFormTests() => BeInteractive();

    [Fact]
    public void Yesterday_at_the_nape_coming_in_is_three_taps()
    {
        var form = RenderForm(appliedDaysAgo: 12);

        form.FindAll("input[type=radio][name=LiftedOn]")[1].Change(true);
        form.FindAll("input[name=zone]")[4].Change(true);
        form.FindAll("input[name=SpotFixed]")[1].Change("false");

        Assert.Equal(
            (Today.PlusDays(-1), null, LiftZone.Nape, false),
            (_input.LiftedOn, _input.LiftedSince, _input.Zone, _input.SpotFixed)
        );
        Assert.True(new ReportLiftRules().Validate(_input).IsValid);
    }

    [Fact]
    public void Not_knowing_the_day_is_an_answer_and_clears_the_day()
    {
        var form = RenderForm(appliedDaysAgo: 12);

        form.FindAll("input[type=radio][name=LiftedOn]")[0].Change(true);
        form.FindAll("input[type=radio][name=LiftedOn]")[4].Change(true);

        Assert.Equal((null, SinceWhen.NotKnown), (_input.LiftedOn, _input.LiftedSince));
    }

    [Fact]
    public void About_when_is_one_tap_and_a_day_on_the_calendar_says_more()
    {
        var form = RenderForm(appliedDaysAgo: 12);

        form.FindAll("input[type=radio][name=LiftedOn]")[2].Change(true);
        Assert.Equal((null, SinceWhen.TwoOrThreeDays), (_input.LiftedOn, _input.LiftedSince));
        form.Find("input[type=date]").Change("2027-01-30");

        Assert.Equal((new LocalDate(2027, 1, 30), null), (_input.LiftedOn, _input.LiftedSince));
    }

    [Fact]
    public void A_bond_made_yesterday_offers_no_earlier_day() =>
        Assert.Equal(3, RenderForm(appliedDaysAgo: 1).FindAll("input[type=radio][name=LiftedOn]").Count);

    [Fact]
    public void No_answer_about_the_day_is_asked_for_again() =>
        Assert.Contains(new ReportLiftRules().Validate(_input).Errors, e => e.PropertyName == nameof(Slice.Input.LiftedOn));

    [Fact]
    public void The_first_aid_defers_to_the_label_and_to_a_physician()
    {
        var text = RenderForm(appliedDaysAgo: 12).Find(".note.caution").TextContent;

        Assert.Contains("superglue", text, StringComparison.Ordinal);
        Assert.Contains("ask a physician", text, StringComparison.Ordinal);
        Assert.Contains("label", text, StringComparison.Ordinal);
    }

    private IRenderedComponent<ReportLiftForm> RenderForm(int appliedDaysAgo)
    {
        var worn = new Slice.Worn(Guid.CreateVersion7(), "S-1", Today.PlusDays(-appliedDaysAgo), Lift: null);
        return Render<ReportLiftForm>(p =>
            p.Add(f => f.Screen, new Slice.Screen("Ada", "C-1", Today, worn, FixLift: null)).Add(f => f.Input, _input)
        );
    }
}
