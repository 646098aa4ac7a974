using Slice = HairClinic.Web.Features.Settings.UnitKinds;

namespace HairClinic.Web.Tests.Features.Settings.UnitKinds;

public sealed class UnitKindsTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task Sorts_of_unit_name_their_base_and_workshop()
    {
        await using var clinic = await OpenAsync(scene => scene.AddUnitKind("Everyday", "French lace", "Workshop North"));

        var screen = await OwnerAsync<Slice, Slice.Screen>(clinic, s => s.OpenAsync(Cancel));

        var kind = Assert.Single(screen.Kinds);
        Assert.Equal(("Everyday", "French lace", "Workshop North"), (kind.Name, kind.Base, kind.Workshop));
        Assert.Equal(9, screen.Bases.Count);
        Assert.Equal(["Workshop North"], screen.Workshops.Select(w => w.Name));
    }
}
