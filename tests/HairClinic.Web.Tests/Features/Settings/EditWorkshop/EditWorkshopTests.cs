using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.Settings;
using NodaTime;
using Slice = HairClinic.Web.Features.Settings.EditWorkshop;

namespace HairClinic.Web.Tests.Features.Settings.EditWorkshop;

public sealed class EditWorkshopTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task A_workshop_shuts_and_opens_again_and_the_later_of_two_edits_is_told()
    {
        await using var clinic = await OpenAsync(scene => scene.AddUnitKind("Everyday", "French lace", "Workshop North"));
        var id = Scene.Workshops[0].Id;
        var late = await OpenFormAsync(clinic, id);
        var input = await OpenFormAsync(clinic, id);
        input.Closures.Add(
            new DaysOffInput
            {
                From = new LocalDate(2027, 2, 10),
                To = new LocalDate(2027, 2, 24),
                Reason = "New year",
            }
        );
        await SaveAsync(clinic, input);
        Assert.Equal("New year", Assert.Single((await OpenFormAsync(clinic, id)).Closures).Reason);

        await Assert.ThrowsAsync<OvertakenException>(() => SaveAsync(clinic, late));
        var opened = await OpenFormAsync(clinic, id);
        opened.Closures.Clear();
        await SaveAsync(clinic, opened);

        Assert.Empty((await OpenFormAsync(clinic, id)).Closures);
    }

    [Fact]
    public async Task A_name_that_is_taken_is_refused()
    {
        await using var clinic = await OpenAsync(scene => scene.AddUnitKind("Everyday", "French lace", "Workshop North"));

        await Refused.SayingAsync(
            "There is a workshop called {0} already.",
            () => SaveAsync(clinic, new Slice.Input { Name = "Workshop North" })
        );
    }

    private async Task<Slice.Input> OpenFormAsync(TestClinic clinic, Guid? id) =>
        (await OwnerAsync<Slice, Slice.Input?>(clinic, s => s.OpenAsync(id, Cancel)))!;

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        OwnerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
}
