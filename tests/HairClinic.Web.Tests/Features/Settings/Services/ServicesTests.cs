using HairClinic.Domain.Visits;
using Slice = HairClinic.Web.Features.Settings.Services;

namespace HairClinic.Web.Tests.Features.Settings.Services;

public sealed class ServicesTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task Each_service_says_how_long_it_takes_and_how_many_may_do_it()
    {
        await using var clinic = await OpenAsync();

        var screen = await OwnerAsync<Slice, Slice.Screen>(clinic, s => s.OpenAsync(Cancel));

        var rebond = screen.Rows.Single(r => r.Name == "Rebond");
        Assert.Equal((ServicePurpose.Rebond, 90, 2), (rebond.Purpose, rebond.Minutes, rebond.People));
    }
}
