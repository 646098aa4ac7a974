using Slice = HairClinic.Web.Features.Settings.Salons;

namespace HairClinic.Web.Tests.Features.Settings.Salons;

public sealed class SalonsTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task An_owner_sees_all_salons_and_a_manager_their_own()
    {
        await using var clinic = await OpenAsync();

        var all = await OwnerAsync<Slice, Slice.Screen>(clinic, s => s.OpenAsync(Cancel));
        var own = await ManagerAsync<Slice, Slice.Screen>(clinic, s => s.OpenAsync(Cancel));

        Assert.Equal([("Canal Side", 1, 5), ("Elm Row", 2, 5)], all.Rows.Select(r => (r.Name, r.Chairs, r.OpenDays)));
        Assert.Equal(["Elm Row"], own.Rows.Select(r => r.Name));
    }
}
