using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.Settings;
using Slice = HairClinic.Web.Features.Settings.EditBaseMaterial;

namespace HairClinic.Web.Tests.Features.Settings.EditBaseMaterial;

public sealed class EditBaseMaterialTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task A_base_s_life_is_the_practice_s_to_edit_and_the_later_of_two_edits_is_told()
    {
        await using var clinic = await OpenAsync();
        var id = Scene.Bases.Single(b => b.Name == "French lace").Id;
        var input = await OpenFormAsync(clinic, id);
        var late = await OpenFormAsync(clinic, id);
        (input.LifeFromDays, input.LifeToDays) = (60, 120);

        await SaveAsync(clinic, input);

        var again = await OpenFormAsync(clinic, id);
        Assert.Equal((60, 120), (again.LifeFromDays, again.LifeToDays));
        await Assert.ThrowsAsync<OvertakenException>(() => SaveAsync(clinic, late));
    }

    [Fact]
    public async Task A_name_that_is_taken_is_refused()
    {
        await using var clinic = await OpenAsync();

        await Refused.SayingAsync(
            "There is a base called {0} already.",
            () =>
                SaveAsync(
                    clinic,
                    new Slice.Input
                    {
                        Name = "Silk top",
                        LifeFromDays = 10,
                        LifeToDays = 20,
                    }
                )
        );
    }

    [Theory]
    [InlineData(null, 20)]
    [InlineData(20, 20)]
    [InlineData(0, 20)]
    public void A_life_that_is_none_is_told(int? from, int? to) =>
        Assert.Single(
            new EditBaseMaterialRules()
                .Validate(
                    new Slice.Input
                    {
                        Name = "Lace",
                        LifeFromDays = from,
                        LifeToDays = to,
                    }
                )
                .Errors
        );

    private async Task<Slice.Input> OpenFormAsync(TestClinic clinic, Guid? id) =>
        (await OwnerAsync<Slice, Slice.Input?>(clinic, s => s.OpenAsync(id, Cancel)))!;

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        OwnerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
}
