using Bunit;
using HairClinic.Domain.Practices;
using HairClinic.Web.Features.Settings;
using HairClinic.Web.Tests.Ui;
using Slice = HairClinic.Web.Features.Settings.FirstPeople;

namespace HairClinic.Web.Tests.Features.Settings.FirstRun.FirstPeople;

public sealed class FirstPeopleFormTests : UiTestContext
{
    [Fact]
    public void One_more_line_takes_one_more_person_and_a_role()
    {
        BeInteractive();
        var input = new Slice.Input { People = [new()] };
        var form = Render<FirstPeopleForm>(p => p.Add(f => f.Input, input));

        form.FindAll("button").Single(b => b.TextContent == "One more").Click();
        form.Find("[name='People[1].Name']").Change("Desk Rowe");
        form.Find("[name='People[1].Role']").Change($"{(int)StaffRole.FrontDesk}");

        Assert.Equal(("Desk Rowe", StaffRole.FrontDesk), (input.People[1].Name, input.People[1].Role));
    }
}
