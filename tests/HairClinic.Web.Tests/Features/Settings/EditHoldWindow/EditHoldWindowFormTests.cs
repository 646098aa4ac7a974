using Bunit;
using HairClinic.Domain.Wear;
using HairClinic.Web.Features.Settings;
using HairClinic.Web.Tests.Ui;
using Slice = HairClinic.Web.Features.Settings.EditHoldWindow;

namespace HairClinic.Web.Tests.Features.Settings.EditHoldWindow;

public sealed class EditHoldWindowFormTests : UiTestContext
{
    [Fact]
    public void The_target_day_follows_the_weeks_as_they_are_typed()
    {
        BeInteractive();
        var input = new Slice.Input { EarliestWeeks = 4, LatestWeeks = 6 };
        var form = Render<EditHoldWindowForm>(p => p.Add(f => f.Screen, new Slice.Screen(input, [], [])).Add(f => f.Input, input));
        var four = new HoldPrior(new HoldWindow(4, 6)).TargetDays;
        Assert.Equal($"For 4–6 weeks the target is day {four}.", form.Find("[role=status]").TextContent);

        form.Find("#f-EarliestWeeks").Change("2");
        form.Find("#f-LatestWeeks").Change("3");

        var two = new HoldPrior(new HoldWindow(2, 3)).TargetDays;
        Assert.Equal($"For 2–3 weeks the target is day {two}.", form.Find("[role=status]").TextContent);
    }

    [Fact]
    public void It_says_that_the_numbers_are_common_practice_and_that_labels_come_first()
    {
        BeInteractive();
        var input = new Slice.Input { EarliestWeeks = 4, LatestWeeks = 3 };
        var form = Render<EditHoldWindowForm>(p => p.Add(f => f.Screen, new Slice.Screen(input, [], [])).Add(f => f.Input, input));

        Assert.Contains("common practice", form.Find(".caution").TextContent, StringComparison.Ordinal);
        Assert.Contains("label comes before", form.Find(".caution").TextContent, StringComparison.Ordinal);
        Assert.Empty(form.FindAll("[role=status]"));
    }
}
