using Bunit;
using HairClinic.Domain.Practices;
using HairClinic.Web.Features.Settings;
using HairClinic.Web.Tests.Ui;
using Slice = HairClinic.Web.Features.Settings.EditPerson;

namespace HairClinic.Web.Tests.Features.Settings.EditPerson;

public sealed class EditPersonFormTests : UiTestContext
{
    private static readonly Slice.Choice Salon = new(Guid.CreateVersion7(), "Elm Row");

    [Fact]
    public void Ticking_a_salon_offers_hours_in_it()
    {
        BeInteractive();
        var input = new Slice.Input { Work = [new Slice.SalonWeek { SalonId = Salon.Id }] };
        var form = Show(input, StaffRole.Stylist, StaffRole.Trainee);
        Assert.DoesNotContain("Hours in Elm Row", form.Markup, StringComparison.Ordinal);

        form.Find("input[type=checkbox]").Change(true);

        Assert.Equal([Salon.Id], input.Salons);
        Assert.Contains("Hours in Elm Row", form.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Who_may_not_give_roles_sees_the_role_and_why_it_is_fixed()
    {
        BeInteractive();
        var form = Show(new Slice.Input { Role = StaffRole.Stylist }, StaffRole.Stylist);

        Assert.True(form.Find("select").HasAttribute("disabled"));
        Assert.Contains("Only an owner gives people their roles.", form.Markup, StringComparison.Ordinal);
    }

    private IRenderedComponent<EditPersonForm> Show(Slice.Input input, params StaffRole[] roles) =>
        Render<EditPersonForm>(p => p.Add(f => f.Screen, new Slice.Screen(input, [Salon], [], roles)).Add(f => f.Input, input));
}
