using HairClinic.Domain.Practices;
using Slice = HairClinic.Web.Features.Settings.People;

namespace HairClinic.Web.Tests.Features.Settings.People;

public sealed class PeopleTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task Everyone_is_listed_with_role_salons_and_sign_in_and_who_left_comes_last()
    {
        await using var clinic = await OpenAsync(scene => scene.Hire("Abel Gone", StaffRole.Stylist, Salon).Leave());

        var screen = await ManagerAsync<Slice, Slice.Screen>(clinic, s => s.OpenAsync(Cancel));

        Assert.Equal(["Mabel Root", "Ottilie Vane", "Sten Ito", "Abel Gone"], screen.Rows.Select(r => r.Name));
        Assert.Equal((StaffRole.Stylist, 7, null), (screen.Rows[2].Role, screen.Rows[2].Skills, screen.Rows[2].Account));
        Assert.Equal(["Elm Row"], screen.Rows[2].Salons);
    }
}
