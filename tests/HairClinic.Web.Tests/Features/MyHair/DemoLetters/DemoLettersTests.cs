using HairClinic.Web.Data.Work;
using HairClinic.Web.Mail;
using NodaTime.Testing;

namespace HairClinic.Web.Tests.Features.MyHair.DemoLetters;

public sealed class DemoLettersTests(PgServer server)
{
    [Fact]
    public async Task A_real_practice_has_no_such_page()
    {
        await using var clinic = await TestClinic.OpenAsync(server, scene => scene.AddPractice("Practice under test"));

        var letters = await clinic.UseAsync<Web.Features.MyHair.DemoLetters, IReadOnlyList<string>?>(
            clinic.Job,
            slice => slice.OpenAsync(TestContext.Current.CancellationToken)
        );

        Assert.Null(letters);
    }

    [Fact]
    public async Task A_letter_becomes_a_file_that_says_whom_it_is_for()
    {
        using var folder = new EmbeddedPostgres.TestFolder();
        var route = new FolderMailSender(new LetterFolder(folder.Path, named: false, new FakeClock(TestClinic.UsualNow)));

        await route.SendAsync(
            new Letter("ada@example.test", "Your link", "It works once."),
            LetterDelivery.ForSingleAttempt(),
            TestContext.Current.CancellationToken
        );

        var text = await File.ReadAllTextAsync(Assert.Single(Directory.GetFiles(folder.Path)), TestContext.Current.CancellationToken);
        Assert.Equal("To: ada@example.test\nSubject: Your link\n\nIt works once.\n", text);
    }
}
