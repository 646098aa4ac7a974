using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data.Writes;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Settings.EditChairs;

namespace HairClinic.Web.Tests.Features.Settings.EditChairs;

public sealed class EditChairsTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task Chairs_are_added_named_ordered_and_taken_out()
    {
        await using var clinic = await OpenAsync();
        var input = await OpenFormAsync(clinic);
        input.Chairs[1].Name = "Window";
        input.Chairs.RemoveAt(0);
        input.Chairs.Insert(0, new Slice.ChairLine { Name = "Private room" });

        await SaveAsync(clinic, input);

        Assert.Equal(["Private room", "Window"], (await OpenFormAsync(clinic)).Chairs.Select(c => c.Name));
        Assert.Equal(["Chair 1"], await clinic.ReadAsync(db => db.Chairs.Where(c => c.Retired).Select(c => c.Name).ToListAsync(Cancel)));
    }

    [Fact]
    public async Task A_chair_with_visits_ahead_stays()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            var client = scene.AddClient("C-1", "Ada Fenwick", Salon);
            scene.Book(
                client,
                scene.ServiceWithPurpose(ServicePurpose.Rebond),
                scene.Chairs[0],
                Stylist,
                TestClinic.UsualNow + Duration.FromDays(7)
            );
        });
        var input = await OpenFormAsync(clinic);
        input.Chairs.RemoveAt(0);

        var refusal = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, input));

        Assert.Equal("Visits still booked on Chair 1: 1. Move them first.", refusal.Message);
    }

    [Fact]
    public async Task Two_people_editing_the_chairs_never_overwrite_each_other_silently()
    {
        await using var clinic = await OpenAsync();
        var mine = await OpenFormAsync(clinic);
        var theirs = await OpenFormAsync(clinic);
        theirs.Chairs.Add(new Slice.ChairLine { Name = "Third" });
        await SaveAsync(clinic, theirs);
        mine.Chairs.Add(new Slice.ChairLine { Name = "Corner" });

        await Assert.ThrowsAsync<OvertakenException>(() => SaveAsync(clinic, mine));
    }

    [Fact]
    public async Task The_chairs_of_another_s_salon_are_not_found_by_a_manager()
    {
        await using var clinic = await OpenAsync();

        Assert.Null(await ManagerAsync<Slice, Slice.Screen?>(clinic, s => s.OpenAsync(Other.Id, Cancel)));
    }

    private async Task<Slice.Input> OpenFormAsync(TestClinic clinic) =>
        (await OwnerAsync<Slice, Slice.Screen?>(clinic, s => s.OpenAsync(Salon.Id, Cancel)))!.Input;

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input) =>
        OwnerAsync<Slice, Slice.Outcome>(clinic, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
}
