using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Web.Features.Settings;
using Slice = HairClinic.Web.Features.Settings.Overview;

namespace HairClinic.Web.Tests.Features.Settings.Overview;

public sealed class OverviewTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task What_is_missing_is_named_with_the_place_to_put_it_right()
    {
        await using var clinic = await OpenAsync(scene =>
            scene.Db.Salons.Add(new Salon(Guid.CreateVersion7(), "Bare Street", "Europe/London", "GBP"))
        );

        var missing = MissingSetupItem.Find(await OwnerAsync<Slice, Slice.Screen>(clinic, s => s.OpenAsync(Cancel))).ToList();

        Assert.Contains(
            missing,
            m => m.Sentence.Contains("no opening hours", StringComparison.Ordinal) && m.Arguments.Contains("Bare Street")
        );
        Assert.Contains(missing, m => m.Sentence.Contains("no chair", StringComparison.Ordinal) && m.Arguments.Contains("Bare Street"));
        Assert.Contains(missing, m => m.Where == "/practice/products");
        Assert.DoesNotContain(missing, m => m.Where == "/practice/hold-windows");
    }

    [Fact]
    public async Task A_practice_that_has_everything_misses_only_its_people_s_sign_ins()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            scene.AddProduct("Adhesive A", ProductKind.Adhesive, "water-based acrylic", "A-1");
            scene.AddUnitKind("Everyday", "French lace", "Workshop North");
            scene.AddClient("C-1", "Ada Fenwick", Salon);
        });

        var missing = MissingSetupItem.Find(await OwnerAsync<Slice, Slice.Screen>(clinic, s => s.OpenAsync(Cancel))).ToList();

        Assert.Equal("/practice/people", Assert.Single(missing).Where);
    }

    [Fact]
    public async Task It_takes_three_round_trips_however_much_there_is()
    {
        await using var clinic = await OpenAsync();

        await OwnerAsync<Slice, Slice.Screen>(clinic, s => s.OpenAsync(Cancel));

        // One for the counts, one for each list of names.
        Assert.Equal(3, clinic.Commands.All.Count);
    }
}
