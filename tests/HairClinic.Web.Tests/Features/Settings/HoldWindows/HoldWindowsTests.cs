using Slice = HairClinic.Web.Features.Settings.HoldWindows;

namespace HairClinic.Web.Tests.Features.Settings.HoldWindows;

public sealed class HoldWindowsTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task The_window_for_everything_comes_first_and_every_target_lies_in_its_window()
    {
        await using var clinic = await OpenAsync();

        var screen = await OwnerAsync<Slice, Slice.Screen>(clinic, s => s.OpenAsync(Cancel));

        Assert.Equal((null, null, null), (screen.Rows[0].Base, screen.Rows[0].Adhesive, screen.Rows[0].Attachment));
        Assert.All(screen.Rows, r => Assert.InRange(r.TargetDay, 7 * r.EarliestWeeks, 7 * r.LatestWeeks));
    }
}
