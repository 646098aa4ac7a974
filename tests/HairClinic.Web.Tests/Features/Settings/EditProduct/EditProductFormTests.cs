using Bunit;
using HairClinic.Web.Features.Settings;
using HairClinic.Web.Tests.Ui;
using NodaTime;
using Slice = HairClinic.Web.Features.Settings.EditProduct;

namespace HairClinic.Web.Tests.Features.Settings.EditProduct;

public sealed class EditProductFormTests : UiTestContext
{
    [Fact]
    public void A_lot_is_added_by_a_tap_and_typed_in()
    {
        BeInteractive();
        var input = new Slice.Input { Name = "Adhesive A" };
        var form = Render<EditProductForm>(p => p.Add(f => f.Input, input));

        form.FindAll("button").Single(b => b.TextContent == "Add a lot").Click();
        form.Find("[name='Lots[0].Code']").Change("A-7");
        form.Find("[name='Lots[0].ExpiresOn']").Change("2027-09-30");

        Assert.Equal(("A-7", new LocalDate(2027, 9, 30)), (input.Lots[0].Code, input.Lots[0].ExpiresOn));
    }

    [Fact]
    public void A_finished_lot_stays_finished()
    {
        BeInteractive();
        var input = new Slice.Input
        {
            Lots =
            [
                new()
                {
                    Id = Guid.CreateVersion7(),
                    Code = "A-1",
                    Finished = true,
                    WasFinished = true,
                },
            ],
        };

        var form = Render<EditProductForm>(p => p.Add(f => f.Input, input));

        Assert.True(form.Find("input[type=checkbox]").HasAttribute("disabled"));
    }
}
