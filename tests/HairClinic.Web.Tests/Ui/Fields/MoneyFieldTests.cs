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

    private IRenderedComponent<MoneyField> Show() =>
        Render<MoneyField>(p =>
            p.Add(f => f.Label, "Price")
                .Add(f => f.Name, "Price")
                .Add(f => f.Currency, "EUR")
                .Bind(f => f.Value, _value, value => _value = value)
        );
}
