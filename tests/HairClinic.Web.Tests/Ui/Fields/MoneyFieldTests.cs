using Bunit;
using HairClinic.Web.Ui.Fields;

namespace HairClinic.Web.Tests.Ui.Fields;

public sealed class MoneyFieldTests : UiTestContext
{
    private long? _value = 4550;

    [Fact]
    public void An_amount_is_shown_with_its_currency()
    {
        var field = Show();
        Assert.Equal("45.50", field.Find("input").GetAttribute("value"));
        Assert.Equal("EUR", field.Find("abbr").TextContent);
    }

    [Fact]
    public void A_new_amount_is_told_in_minor_units()
    {
        Show().Find("input").Change("12.3");
        Assert.Equal(1230, _value);
    }

    [Fact]
    public void What_is_no_amount_stays_typed_and_is_explained()
    {
        var field = Show();
        field.Find("input").Change("12.345");
        Assert.Equal(4550, _value);
        Assert.Equal("12.345", field.Find("input").GetAttribute("value"));
        Assert.Contains("45.50", field.Find(".errors").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_an_amount_with_two_readings_both_are_named()
    {
        var field = Show();
        field.Find("input").Change("1.250");
        Assert.Equal(4550, _value);
        Assert.Equal(
            "“1.250” can be read as 1250.00 or as 1.25. Write the one you mean in this way.",
            field.Find(".errors").TextContent.Trim()
        );
    }

    private IRenderedComponent<MoneyField> Show() =>
        Render<MoneyField>(p =>
            p.Add(f => f.Label, "Price")
                .Add(f => f.Name, "Price")
                .Add(f => f.Currency, "EUR")
                .Bind(f => f.Value, _value, value => _value = value)
        );
}
