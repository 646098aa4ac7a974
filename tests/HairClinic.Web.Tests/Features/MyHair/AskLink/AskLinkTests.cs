using System.Text.RegularExpressions;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Demo.Scenes;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Slice = HairClinic.Web.Features.MyHair.AskLink;

namespace HairClinic.Web.Tests.Features.MyHair.AskLink;

public sealed class AskLinkTests(PgServer server)
{
    [Fact]
    public async Task A_known_address_gets_one_letter_and_an_unknown_one_none()
    {
        var address = $"{Guid.CreateVersion7():N}@example.test";
        await using var clinic = await TestClinic.OpenAsync(server, scene => Lay(scene, address));

        await AskAsync(clinic, address.ToUpperInvariant());
        await AskAsync(clinic, $"nobody-{address}");

        var letter = Assert.Single(await LettersAsync(clinic, address));
        Assert.Contains("/my-hair/open-link?token=", letter.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Asking_for_an_unknown_address_sends_the_same_commands_to_the_database()
    {
        var address = $"{Guid.CreateVersion7():N}@example.test";
        await using var clinic = await TestClinic.OpenAsync(server, scene => Lay(scene, address));
        await AskAsync(clinic, $"warm-{address}");
        clinic.Commands.Clear();
        await AskAsync(clinic, address);
        var known = clinic.Commands.All.Select(Shape).ToList();
        clinic.Commands.Clear();

        await AskAsync(clinic, $"nobody-{address}");

        Assert.Equal(known, clinic.Commands.All.Select(Shape));

        // Without the time each took and the lengths of what was sent.
        static string Shape(string command) => command[command.IndexOf('\n', StringComparison.Ordinal)..];
    }

    [Fact]
    public async Task A_sixth_link_within_an_hour_is_not_sent_however_fast_they_are_asked_for()
    {
        var address = $"{Guid.CreateVersion7():N}@example.test";
        await using var clinic = await TestClinic.OpenAsync(server, scene => Lay(scene, address));

        await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => AskAsync(clinic, address)));
        Assert.Equal(5, (await LettersAsync(clinic, address)).Count);

        clinic.Clock.Advance(Duration.FromMinutes(60));
        await AskAsync(clinic, address);
        Assert.Equal(6, (await LettersAsync(clinic, address)).Count);
    }

    [Fact]
    public async Task The_letter_says_nothing_of_hair()
    {
        var address = $"{Guid.CreateVersion7():N}@example.test";
        await using var clinic = await TestClinic.OpenAsync(server, scene => Lay(scene, address));

        await AskAsync(clinic, address);

        var letter = Assert.Single(await LettersAsync(clinic, address));
        // The address of the site is the practice's own to choose.
        var text = Regex.Replace(letter.Subject + letter.Text, @"https?://\S+", "");
        foreach (var word in new[] { "rebond", "wig", "hair", "clinic", "salon", "system", "lift" })
            Assert.DoesNotContain(word, text, StringComparison.OrdinalIgnoreCase);
    }

    private static void Lay(Scene scene, string address)
    {
        scene.AddPractice("Practice under test");
        scene.AddClient("C-1", "Ada Fenwick", scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1), email: address);
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

    // Does what lies behind the screens but sending: the letters stay where they can be read.
    private static Task<IReadOnlyList<Letter>> LettersAsync(TestClinic clinic, string address) =>
        clinic.AsAsync<IReadOnlyList<Letter>>(
            clinic.Job,
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                await using var unfenced = services.GetRequiredService<ClinicDbFactory>().OpenWithoutActor();
                var links = services.GetRequiredService<SignInLinkStore>();
                foreach (var asked in await services.GetRequiredService<LinkAskQueue>().DequeueBatchAsync(unfenced, address, Cancel))
                    await links.AnswerRequestAsync(db, asked, Cancel);
                await db.SaveChangesAsync(Cancel);
                var sent = await db.WorkItems.Where(w => w.Kind == WorkKind.SendMail).ToListAsync(Cancel);
                return [.. sent.Select(WorkItemFactory.ReadBody<Letter>)];
            }
        );

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;
}
