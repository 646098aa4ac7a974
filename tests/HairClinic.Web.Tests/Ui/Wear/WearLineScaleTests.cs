using HairClinic.Web.Ui.Wear;
using NodaTime;

namespace HairClinic.Web.Tests.Ui.Wear;

public sealed class WearLineScaleTests
{
    [Fact]
    public void Days_become_shares_of_the_width_and_stay_inside_it()
    {
        var scale = new WearLineScale(new(2031, 1, 1), new(2031, 1, 11));
        Assert.Equal("0%", scale.X(new(2030, 6, 1)));
        Assert.Equal("50%", scale.X(new(2031, 1, 6)));
        Assert.Equal("100%", scale.X(new(2032, 6, 1)));
        Assert.Equal("30%", scale.Width(new(2031, 1, 2), new(2031, 1, 5)));
    }

    [Theory]
    [InlineData(2)]
    [InlineData(14)]
    [InlineData(60)]
    public void There_are_never_more_than_twelve_month_labels_nor_more_than_four_on_a_phone(int months)
    {
        var from = new LocalDate(2031, 1, 15);
        var labels = new WearLineScale(from, from.PlusMonths(months)).Months();
        Assert.InRange(labels.Count, 1, 12);
        Assert.InRange(labels.Count(label => !label.Minor), 1, 4);
        Assert.All(labels, label => Assert.Equal(1, label.On.Day));
    }

    [Fact]
    public void A_line_of_one_day_does_not_divide_by_nothing() =>
        Assert.Equal("0%", new WearLineScale(new(2031, 1, 1), new(2031, 1, 1)).X(new(2031, 1, 1)));
}
