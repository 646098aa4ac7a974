using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Writes;
using Slice = HairClinic.Web.Features.Settings.EditUnitKind;

namespace HairClinic.Web.Tests.Features.Settings.EditUnitKind;

public sealed class EditUnitKindTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task Another_base_moves_due_dates_another_workshop_does_not()
    {
        await using var clinic = await OpenAsync(scene => scene.AddUnitKind("Everyday", "French lace", "Workshop North"));
        var id = Scene.Kinds[0].Id;
        var unknown = (await OpenFormAsync(clinic, id)).Input;
        var late = (await OpenFormAsync(clinic, id)).Input;
        unknown.WorkshopId = null;
        await SaveAsync(clinic, unknown);
        Assert.Equal(0, await RefreshesAsync(clinic));

        var rebased = (await OpenFormAsync(clinic, id)).Input;
        rebased.BaseMaterialId = Scene.Bases.Single(b => b.Name == "Silk top").Id;
        await SaveAsync(clinic, rebased);

        Assert.Equal(1, await RefreshesAsync(clinic));
        await Assert.ThrowsAsync<OvertakenException>(() => SaveAsync(clinic, late));
    }

    [Fact]
    public async Task A_name_that_is_taken_is_refused()
    {
        await using var clinic = await OpenAsync(scene => scene.AddUnitKind("Everyday", "French lace", "Workshop North"));
        var input = (await OpenFormAsync(clinic, null)).Input;
        input.Name = "Everyday";

        await Refused.SayingAsync("There is a kind of unit called {0} already.", () => SaveAsync(clinic, input));
    }

    [Fact]
    public async Task The_rule_of_spares_is_shown_with_the_kind_and_stays_as_it_is()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            scene.AddUnitKind("Everyday", "French lace", "Workshop North").KeepSpares(2);
            scene.AddUnitKind("Sunday", "French lace", "Workshop North");
        });
        var opened = await OpenFormAsync(clinic, Scene.Kinds[0].Id);
        opened.Input.Name = "Weekday";
        await SaveAsync(clinic, opened.Input);

        Assert.Equal(2, opened.Spares);
        Assert.Equal(2, (await OpenFormAsync(clinic, Scene.Kinds[0].Id)).Spares);
        Assert.Equal(0, (await OpenFormAsync(clinic, Scene.Kinds[1].Id)).Spares);
        Assert.Null((await OpenFormAsync(clinic, null)).Spares);
    }

    private async Task<Slice.Screen> OpenFormAsync(TestClinic clinic, Guid? id) =>
        (await OwnerAsync<Slice, Slice.Screen?>(clinic, s => s.OpenAsync(id, Cancel)))!;

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        OwnerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
}
