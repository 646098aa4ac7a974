using Bunit;
using HairClinic.Web.Features.Visits;
using HairClinic.Web.Tests.Ui;
using Slice = HairClinic.Web.Features.Visits.CallOff;

namespace HairClinic.Web.Tests.Features.Visits.CallOff;

public sealed class CallOffFormTests : UiTestContext
{
    [Fact]
    public void Two_taps_call_it_off()
    {
        var saved = 0;
        var input = new Slice.Input { VisitId = Guid.CreateVersion7() };
        var form = Render<CallOffForm>(p => p.Add(f => f.Input, input).Add(f => f.OnSave, () => saved++));

        form.FindAll("input[type=radio]")[0].Change(true);
        form.Find("form").Submit();

        Assert.Equal((CalledOffBy.Client, 1), (input.By, saved));
    }

    [Fact]
    public void What_is_missing_is_said_at_its_field()
    {
        var input = new Slice.Input { By = CalledOffBy.Salon };

        var form = Render<CallOffForm>(p => p.Add(f => f.Input, input).Add(f => f.Check, new CallOffRules().Validate(input)));

        Assert.Equal("Write why: the client will ask.", form.Find(".errors li").TextContent);
    }
}
