using Bunit;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Wear;
using HairClinic.Web.Features.Units;
using HairClinic.Web.Tests.Ui;
using NodaTime;
using Slice = HairClinic.Web.Features.Units.TakeStep;

namespace HairClinic.Web.Tests.Features.Units.TakeStep;

public sealed class TakeStepFormTests : UiTestContext
{
    private static readonly LocalDate Today = UnitBook.Today;
    private static readonly Guid Salon = Guid.CreateVersion7();
    private readonly Slice.Input _input = new() { On = Today, SalonId = Salon };
    private bool _saved;

    public TakeStepFormTests() => BeInteractive();

    [Fact]
    public void All_as_ordered_is_one_tap()
    {
        var form = RenderForm(UnitStepKind.Inspected, arrivedDaysAgo: 1);
        Assert.Contains("6 days left for a claim", form.Markup, StringComparison.Ordinal);

        form.FindAll("button").Single(b => b.TextContent.Contains("All as ordered", StringComparison.Ordinal)).Click();

        Assert.True(_saved);
        Assert.Equal(
            (true, true, true, ArrivalDecision.Accepted),
            (_input.KindAsOrdered, _input.BaseAsOrdered, _input.PriceAsOrdered, _input.Decision)
        );
        Assert.True(new TakeStepRules().Validate(_input).IsValid);
    }

    [Fact]
    public void What_is_made_again_asks_what_is_wrong_and_who_pays()
    {
        var form = RenderForm(UnitStepKind.Inspected, arrivedDaysAgo: 8);
        Assert.Contains("The time for a claim ended on", form.Markup, StringComparison.Ordinal);
        Assert.Empty(form.FindAll("input[name=RemakePaidBy]"));

        foreach (var (name, answer) in new[] { ("KindAsOrdered", 1), ("BaseAsOrdered", 0), ("PriceAsOrdered", 0) })
            form.FindAll($"input[name={name}]")[answer].Change(true);
        form.FindAll("input[name=Decision]")[(int)ArrivalDecision.Remake].Change(true);

        Assert.Equal(
            ["Write what is wrong with it.", "Say who pays for making it again."],
            new TakeStepRules().Validate(_input).Errors.Select(e => e.ErrorMessage)
        );
        form.FindAll("input[name=RemakePaidBy]")[(int)RemakePayer.Workshop].Change(true);
        _input.Note = "wrong kind";
        Assert.True(new TakeStepRules().Validate(_input).IsValid);
        Assert.Equal((false, true), (_input.KindAsOrdered, _input.BaseAsOrdered));
    }

    [Fact]
    public void What_arrives_damaged_asks_what_is_damaged_and_warns_before_the_scissors()
    {
        var form = RenderForm(UnitStepKind.Arrived, arrivedDaysAgo: null);
        Assert.Contains("Inspect it first. Once it is cut, washed or worn", form.Markup, StringComparison.Ordinal);
        Assert.DoesNotContain("What is damaged", form.Markup, StringComparison.Ordinal);

        form.FindAll("input[name=Damaged]")[0].Change(true);

        Assert.Contains("What is damaged", form.Markup, StringComparison.Ordinal);
        Assert.Equal(["Write what is damaged."], new TakeStepRules().Validate(_input).Errors.Select(e => e.ErrorMessage));
    }

    [Fact]
    public void Whoever_retires_it_is_asked_how_it_looks_and_may_leave_it_open()
    {
        _input.Note = "shed";
        var form = RenderForm(UnitStepKind.Retired, arrivedDaysAgo: 30);
        Assert.Equal("Not said", form.Find("input[name=EndCondition][checked]").ParentElement!.TextContent.Trim());
        Assert.Empty(form.FindAll("input[name=Base][checked]"));
        Assert.DoesNotContain("Since when", form.Markup, StringComparison.Ordinal);
        Assert.True(new TakeStepRules().Validate(_input).IsValid);

        form.FindAll("input[name=EndCondition]")[0].Change(true);
        form.FindAll("input[type=radio][name=WornOutOn]")[3].Change(true);

        Assert.Equal((UnitCondition.WornOut, SinceWhen.AboutAWeek), (_input.EndCondition, _input.WornOutSince));
    }

    [Fact]
    public void A_grade_of_three_asks_since_when_too_and_is_a_look_of_its_own()
    {
        var form = RenderForm(UnitStepKind.Retired, arrivedDaysAgo: 30);

        form.FindAll("input[name=Knots]")[3].Change(true);

        Assert.Contains("Since when has it looked worn out?", form.Markup, StringComparison.Ordinal);
        Assert.Equal((3, false), (_input.Grades.Knots!.Value, _input.GradesCopied));
    }

    [Fact]
    public void Of_a_lost_unit_it_is_asked_since_when_it_is_gone()
    {
        (_input.On, _input.Note) = (null, "left on a train");
        var form = RenderForm(UnitStepKind.Lost, arrivedDaysAgo: 30);
        Assert.Equal(
            ["Say since when it is gone, or that it is not known."],
            new TakeStepRules().Validate(_input).Errors.Select(e => e.ErrorMessage)
        );

        form.FindAll("input[type=radio][name=On]")[4].Change(true);

        Assert.True(new TakeStepRules().Validate(_input).IsValid);
        Assert.Equal(Today, _input.DayOf(Today));
    }

    private IRenderedComponent<TakeStepForm> RenderForm(UnitStepKind step, int? arrivedDaysAgo)
    {
        _input.Step = step;
        var unit = new HairSystem(Guid.CreateVersion7(), "U-1", Guid.CreateVersion7(), Guid.CreateVersion7(), Today.PlusDays(-60));
        unit.Order(Today.PlusDays(-60));
        if (arrivedDaysAgo is { } days)
            unit.Receive(
                Today.PlusDays(-days),
                Salon,
                damaged: false,
                null,
                claimDays: 7,
                new UnitStepEntry(Guid.CreateVersion7(), Today, TestClinic.UsualNow, null)
            );
        var screen = new Slice.Screen(
            unit,
            "Everyday",
            "Silk top",
            "Workshop North",
            null,
            Today,
            [new SalonChoice(Salon, "Elm Row", "GBP")]
        )
        {
            MayTake = true,
            Claim = unit.CurrentArrival,
            Start = _input,
        };
        return Render<TakeStepForm>(p => p.Add(f => f.Screen, screen).Add(f => f.Input, _input).Add(f => f.OnSave, () => _saved = true));
    }
}
