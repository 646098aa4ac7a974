using Bunit;
using HairClinic.Web.Features.Clients;
using HairClinic.Web.Tests.Ui;

namespace HairClinic.Web.Tests.Features.Clients;

public sealed class SamePhoneNumberNoticeTests : UiTestContext
{
    [Fact]
    public void Who_has_the_number_can_be_looked_at_and_a_second_tap_saves_all_the_same()
    {
        BeInteractive();
        JSInterop.Mode = JSRuntimeMode.Loose;
        var insisted = false;
        var other = new SharedPhoneCheck.Other(Guid.CreateVersion7(), "Kester Vale");

        var notice = Render<SameNumberNotice>(p => p.Add(n => n.Others, [other]).Add(n => n.OnInsist, () => insisted = true));

        var link = notice.Find("a");
        Assert.Equal($"/clients/{other.ClientId}/card", link.GetAttribute("href"));
        Assert.Contains("private", link.ClassList);
        notice.Find("button").Click();
        Assert.True(insisted);
    }
}
