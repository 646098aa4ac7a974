using Bunit;
using HairClinic.Domain.Checks;
using HairClinic.Domain.HairSystems;
using HairClinic.Web.Features.Units;
using HairClinic.Web.Tests.Ui;
using NodaTime;
using Slice = HairClinic.Web.Features.Units.DatesToCheck;

namespace HairClinic.Web.Tests.Features.Units.DatesToCheck;

public sealed class DateToCheckLineTests : UiTestContext
{
    private static readonly LocalDate Today = new(2027, 2, 3);
    private static readonly Guid Unit = Guid.CreateVersion7();
    private readonly List<DateCheckAnswer> _answers = [];

    [Fact]
    public void An_order_that_took_too_long_is_asked_about_in_a_sentence_with_both_answers_and_its_dates()
    {
        var step = new Slice.StepLink(Unit, Guid.CreateVersion7(), UnitStepKind.Arrived);
        var line = Line(DateCheckKind.OrderTook, new(Today.PlusDays(-560), Today, 560, 41, 77), r => r with { Steps = [step] });

        Assert.Contains("Order 1023 took 560 days", line.Markup, StringComparison.Ordinal);
        Assert.Contains("Workshop North usually takes 41 to 77. Is the date right?", line.Markup, StringComparison.Ordinal);
        Assert.NotNull(line.Find($"a[href='/units/{Unit}/correct-step-day?step={step.StepId}']"));
        foreach (var button in line.FindAll("button").Select((_, i) => i).ToList())
            line.FindAll("button")[button].Click();
        Assert.Equal([DateCheckAnswer.Right, DateCheckAnswer.Wrong], _answers);
    }

    [Fact]
    public void A_forgotten_order_arrived_was_called_off_or_is_still_waited_for()
    {
        var line = Line(DateCheckKind.OrderWaiting, new(Today.PlusDays(-400), null, 400, 41, 77));

        Assert.Contains("Order 1023 has been on its way for 400 days", line.Markup, StringComparison.Ordinal);
        Assert.NotNull(line.Find($"a[href^='/units/{Unit}/take-step?step=Arrived']"));
        Assert.NotNull(line.Find($"a[href^='/units/{Unit}/take-step?step=Cancelled']"));
        line.Find("button").Click();
        Assert.Equal([DateCheckAnswer.Right], _answers);
        Assert.Single(line.FindAll("button"));
    }

    [Fact]
    public void Days_in_which_a_workshop_seems_closed_are_entered_on_its_page()
    {
        var check = DateCheck.OfWorkshop(
            Guid.CreateVersion7(),
            Guid.CreateVersion7(),
            new(new LocalDate(2026, 12, 20), new LocalDate(2027, 1, 6), 3, 20),
            Today
        );
        var line = Rendered(new Slice.Row(check, null, null, null, Today) { Workshop = "Workshop North", Steps = [] });

        Assert.Contains(
            "It seems Workshop North sends nothing from about 20 December to 6 January, every year.",
            line.Markup,
            StringComparison.Ordinal
        );
        Assert.NotNull(line.Find($"a[href='/practice/edit-workshop/{check.WorkshopId}']"));
        Assert.Empty(line.FindAll("button"));
    }

    private IRenderedComponent<DateToCheckLine> Line(DateCheckKind kind, DatesInDoubt dates, Func<Slice.Row, Slice.Row>? with = null)
    {
        var check = DateCheck.OfUnit(Guid.CreateVersion7(), kind, Unit, dates, Today);
        var row = new Slice.Row(check, Unit, "U-1", new UnitOwner(Guid.CreateVersion7(), "Una Test", "c-1"), Today)
        {
            Workshop = "Workshop North",
            Order = "1023",
            Steps = [],
        };
        return Rendered(with?.Invoke(row) ?? row);
    }

    private IRenderedComponent<DateToCheckLine> Rendered(Slice.Row row)
    {
        BeInteractive();
        return Render<DateToCheckLine>(p => p.Add(x => x.Row, row).Add(x => x.OnAnswer, answer => _answers.Add(answer)));
    }
}
