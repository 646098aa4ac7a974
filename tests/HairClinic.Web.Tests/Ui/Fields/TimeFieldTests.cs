using Bunit;
using HairClinic.Web.Ui.Fields;
using NodaTime;

namespace HairClinic.Web.Tests.Ui.Fields;

public sealed class TimeFieldTests : UiTestContext
{
    private LocalTime? _value = new LocalTime(9, 5);

    [Fact]
    public void A_time_goes_in_and_out_by_the_clock()
    {
        var field = Show();
        Assert.Equal("09:05", field.Find("input[type=time]").GetAttribute("value"));
        field.Find("input").Change("14:30");
        Assert.Equal(new LocalTime(14, 30), _value);
    }

    [Fact]
    public void What_is_no_time_is_refused_in_words()
    {
        var field = Show();
        field.Find("input").Change("25:00");
        Assert.Contains("not a time", field.Find(".errors").TextContent, StringComparison.Ordinal);
        Assert.Equal(new LocalTime(9, 5), _value);
    }

    private IRenderedComponent<TimeField> Show() =>
        Render<TimeField>(p => p.Add(f => f.Label, "At").Add(f => f.Name, "At").Bind(f => f.Value, _value, value => _value = value));
}
