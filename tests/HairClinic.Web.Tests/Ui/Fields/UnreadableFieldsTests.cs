using Bunit;
using FluentValidation;
using HairClinic.Web.Shell;
using HairClinic.Web.Ui;
using HairClinic.Web.Ui.Feedback;
using HairClinic.Web.Ui.Fields;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Web.Tests.Ui.Fields;

public sealed class UnreadableFieldsTests : UiTestContext
{
    public UnreadableFieldsTests() => Services.AddScoped<UnreadableFields>();

    [Fact]
    public void A_form_with_a_field_that_cannot_be_read_is_not_saved_with_the_value_before()
    {
        var page = Render<Sample>();

        page.Find("#f-Price").Change("1.250");
        page.Find("#save").Click();

        Assert.Empty(page.Instance.Saved);
        Assert.Equal("1.250", page.Find("#f-Price").GetAttribute("value"));
        Assert.Contains(
            "can be read as 1250.00 or as 1.25",
            page.Find(".summary a[href$='#f-Price']").TextContent,
            StringComparison.Ordinal
        );
        Assert.Single(page.FindAll(".field.wrong .errors li"));
    }

    [Fact]
    public void Once_it_can_be_read_it_is_saved()
    {
        var page = Render<Sample>();

        page.Find("#f-Price").Change("1.250");
        page.Find("#save").Click();
        page.Find("#save").Click();
        page.Find("#f-Price").Change("1250.00");
        page.Find("#save").Click();

        Assert.Equal([125_000], page.Instance.Saved);
    }

    [Fact]
    public void A_field_that_is_gone_stands_in_nobodys_way()
    {
        var page = Render<Sample>();

        page.Find("#f-Price").Change("1.250");
        page.Render(p => p.Add(x => x.Free, true));
        page.Find("#save").Click();

        Assert.Equal([4550], page.Instance.Saved);
    }

    private sealed record Input(long? Price);

    private sealed class Sample : LiveComponent
    {
        private readonly Submission<Input> _submission = new(new InlineValidator<Input>());
        private long? _price = 4550;

        public List<long?> Saved { get; } = [];

        /// <summary>The price is not asked for.</summary>
        [Parameter]
        public bool Free { get; set; }

        protected override void BuildRenderTree(RenderTreeBuilder builder)
        {
            builder.OpenComponent<ErrorSummary>(0);
            builder.AddComponentParameter(1, nameof(ErrorSummary.Result), _submission.Check);
            builder.CloseComponent();
            if (!Free)
            {
                builder.OpenComponent<MoneyField>(2);
                builder.AddComponentParameter(3, nameof(MoneyField.Label), "Price");
                builder.AddComponentParameter(4, nameof(MoneyField.Name), nameof(Input.Price));
                builder.AddComponentParameter(5, nameof(MoneyField.Currency), "EUR");
                builder.AddComponentParameter(6, nameof(MoneyField.Value), _price);
                builder.AddComponentParameter(7, nameof(MoneyField.Result), _submission.Check);
                builder.AddComponentParameter(
                    8,
                    nameof(MoneyField.ValueChanged),
                    EventCallback.Factory.Create<long?>(this, value => _price = value)
                );
                builder.CloseComponent();
            }
            builder.OpenElement(9, "button");
            builder.AddAttribute(10, "id", "save");
            builder.AddAttribute(11, "onclick", EventCallback.Factory.Create(this, SaveAsync));
            builder.CloseElement();
        }

        private Task SaveAsync() =>
            _submission.SendAsync(
                new Input(_price),
                _ =>
                {
                    Saved.Add(_price);
                    return Task.CompletedTask;
                }
            );
    }
}
