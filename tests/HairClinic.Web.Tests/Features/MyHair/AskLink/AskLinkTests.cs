using HairClinic.Web.Demo.Scenes;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.MyHair.AskLink.AskLink;

namespace HairClinic.Web.Tests.Features.MyHair.AskLink;

public sealed class AskLinkTests(PgServer server)
{
    [Fact]
    public async Task A_known_address_gets_one_letter_and_an_unknown_one_none()
    {
        var address = $"{Guid.CreateVersion7():N}@example.test";
        await using var clinic = await TestClinic.OpenAsync(server, scene => Lay(scene, address));

        await AskAsync(clinic, address.ToUpperInvariant());
        await AskAsync(clinic, "nobody@example.test");

        var letters = await clinic.ReadAsync(db => db.WorkItems.Select(w => w.Body).ToListAsync(TestContext.Current.CancellationToken));
        var letter = Assert.Single(letters);
        Assert.Contains("/my-hair/open-link?token=", letter, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_letter_says_nothing_of_hair()
    {
        var address = $"{Guid.CreateVersion7():N}@example.test";
        await using var clinic = await TestClinic.OpenAsync(server, scene => Lay(scene, address));

        await AskAsync(clinic, address);

        var letter = await clinic.ReadAsync(db => db.WorkItems.Select(w => w.Body).SingleAsync(TestContext.Current.CancellationToken));
        foreach (var word in new[] { "rebond", "wig", "clinic", "salon", "system", "lift" })
            Assert.DoesNotContain(word, letter, StringComparison.OrdinalIgnoreCase);
    }

    private static void Lay(Scene scene, string address)
    {
        scene.LayPractice("Practice under test");
        scene.Welcome("C-1", "Ada Fenwick", scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1), email: address);
    }

    private static Task<bool> AskAsync(TestClinic clinic, string address) =>
        clinic.UseAsync<Slice, bool>(
            clinic.Job,
            async slice =>
            {
                await slice.SaveAsync(new Slice.Input { Email = address }, TestContext.Current.CancellationToken);
                return true;
            }
        );
}
