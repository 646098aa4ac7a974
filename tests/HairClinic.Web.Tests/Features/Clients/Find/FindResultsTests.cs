using Bunit;
using Bunit.TestDoubles;
using HairClinic.Web.Features.Clients;
using HairClinic.Web.Shell;
using HairClinic.Web.Tests.Ui;
using Slice = HairClinic.Web.Features.Clients.Find;

namespace HairClinic.Web.Tests.Features.Clients.Find;

public sealed class FindResultsTests : UiTestContext
{
    private readonly BunitAuthorizationContext _authorization;

    public FindResultsTests() => _authorization = AddAuthorization();

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Another_salon_can_be_asked_whether_anybody_was_found_or_not(bool found)
    {
        _authorization.SetAuthorized("desk").SetPolicies(Policies.Desk);
        var row = new Slice.Row(Guid.CreateVersion7(), "C-1", "Ada Fenwick", null, null, "Elm Row", default, null, null, false, false);

        var results = Render<FindResults>(p => p.Add(r => r.Screen, new Slice.Screen(found ? [row] : [], false, true, [])));

        Assert.Equal("They may be known in another salon: ask there.", Squeezed(results.Find(".note").TextContent));
        Assert.Equal("/clients/request-client-access", results.Find(".note a").GetAttribute("href"));
    }

    [Fact]
    public void Who_may_not_ask_reads_the_same_without_the_link()
    {
        _authorization.SetAuthorized("stylist");

        var results = Render<FindResults>(p => p.Add(r => r.Screen, new Slice.Screen([], false, true, [])));

        Assert.Equal("They may be known in another salon: ask there.", Squeezed(results.Find(".note").TextContent));
        Assert.Empty(results.FindAll(".note a"));
    }

    private static string Squeezed(string text) =>
        string.Join(' ', text.Split((char[])[' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));
}
