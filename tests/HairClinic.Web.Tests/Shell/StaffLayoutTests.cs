using Bunit;
using Bunit.TestDoubles;
using HairClinic.Web.Shell;
using HairClinic.Web.Tests.Ui;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Web.Tests.Shell;

public sealed class StaffLayoutTests : UiTestContext
{
    private static readonly SalonOption Harbour = new(Guid.Parse("00000000-0000-0000-0000-000000000001"), "Harbour Street");
    private static readonly SalonOption Mill = new(Guid.Parse("00000000-0000-0000-0000-000000000002"), "Mill Lane");
    private readonly BunitAuthorizationContext _person;

    public StaffLayoutTests()
    {
        Services.AddSingleton<AntiforgeryStateProvider, FixedToken>();
        JSInterop.Mode = JSRuntimeMode.Loose;
        _person = AddAuthorization();
    }

    [Theory]
    [InlineData(new[] { Policies.Staff, Policies.Desk }, new[] { "Day", "Due", "Orders", "Shelf" })]
    [InlineData(new[] { Policies.Staff, Policies.Chair }, new[] { "Day", "Chair", "Orders", "Shelf" })]
    [InlineData(
        new[] { Policies.Staff, Policies.Desk, Policies.Chair, Policies.Manage },
        new[] { "Day", "Due", "Chair", "Orders", "Shelf", "Ahead", "What lasts", "Practice" }
    )]
    public void Each_person_sees_the_places_they_may_enter(string[] policies, string[] places)
    {
        _person.SetAuthorized("ilse").SetPolicies(policies);
        Assert.Equal(places, Show().FindAll("nav a").Select(link => link.TextContent));
    }

    [Fact]
    public void Whoever_is_not_signed_in_sees_no_place_and_no_find_box()
    {
        _person.SetNotAuthorized();
        Assert.Empty(Show().FindAll("nav a, [role=search], [data-cover], form[action='/sign-out']"));
    }

    [Fact]
    public void Find_is_a_plain_form_that_works_before_any_script()
    {
        _person.SetAuthorized("ilse").SetPolicies(Policies.Staff);
        var find = Show().Find("form[role=search]");
        Assert.Equal(
            ("/find", "get", "q"),
            (find.GetAttribute("action"), find.GetAttribute("method"), find.QuerySelector("input")!.GetAttribute("name"))
        );
    }

    [Fact]
    public void Signing_out_is_a_post_that_carries_its_token()
    {
        _person.SetAuthorized("ilse").SetPolicies(Policies.Staff);
        Assert.Equal("token", Show().Find("form[action='/sign-out'] input[type=hidden]").GetAttribute("value"));
    }

    [Fact]
    public void Who_is_signed_in_is_shown_and_can_be_covered()
    {
        _person.SetAuthorized("ilse").SetPolicies(Policies.Staff);
        var shown = Show(new("Ilse Brandt", [Harbour], Harbour.Id) { CoverAfterMinutes = 3 });
        Assert.Equal("Ilse Brandt", shown.Find(".person summary .private").TextContent);
        Assert.Equal("3", shown.Find("[data-cover]").GetAttribute("data-cover-after"));
    }

    [Fact]
    public void Salons_can_be_switched_only_when_there_are_several()
    {
        _person.SetAuthorized("ilse").SetPolicies(Policies.Staff);
        Assert.Empty(Show(new("Ilse Brandt", [Harbour], Harbour.Id)).FindAll("details.salon"));
        var several = Show(new("Ilse Brandt", [Harbour, Mill], Mill.Id));
        Assert.Equal("Mill Lane", several.Find(".salon button[aria-current]").TextContent);
    }

    private IRenderedComponent<IComponent> Show(ShellFacts? facts = null) =>
        Render(builder =>
        {
            builder.OpenComponent<CascadingValue<ShellFacts>>(0);
            builder.AddAttribute(1, "Value", facts);
            builder.AddAttribute(
                2,
                "ChildContent",
                (RenderFragment)(
                    inner =>
                    {
                        inner.OpenComponent<StaffLayout>(3);
                        inner.AddAttribute(4, "Body", (RenderFragment)(body => body.AddMarkupContent(5, "<h1>Day</h1>")));
                        inner.CloseComponent();
                    }
                )
            );
            builder.CloseComponent();
        });

    private sealed class FixedToken : AntiforgeryStateProvider
    {
        public override AntiforgeryRequestToken GetAntiforgeryToken() => new("token", "__token");
    }
}
