using HairClinic.Web.Data.Work;
using HairClinic.Web.Mail;
using HairClinic.Web.Tests.EmbeddedPostgres;
using HairClinic.Web.Tests.Workers;
using Microsoft.Extensions.Configuration;
using NodaTime;
using NodaTime.Testing;

namespace HairClinic.Web.Tests.Mail;

public sealed class FolderMailSenderTests(PgServer server)
{
    [Fact]
    public async Task Without_a_mail_server_each_letter_becomes_a_file_of_its_own()
    {
        var folder = Directory.CreateTempSubdirectory("hairclinic-test-");
        try
        {
            var mail = Path.Combine(folder.FullName, "mail");
            await using var clinic = await TestClinic.OpenAsync(
                server,
                scene =>
                    scene.Db.WorkItems.AddRange(
                        WorkItemFactory.SendLetter(new("a@example.test", "One", "First."), scene.Now),
                        WorkItemFactory.SendLetter(new("b@example.test", "Two", "Second."), scene.Now)
                    )
            );

            await Letterbox.WorkAsync(clinic, new FolderMailSender(new LetterFolder(mail, named: false, clinic.Clock)));

            var texts = Directory.GetFiles(mail, "20270203T100000000-*.txt").Select(File.ReadAllText).Order();
            Assert.Equal(["To: a@example.test\nSubject: One\n\nFirst.\n", "To: b@example.test\nSubject: Two\n\nSecond.\n"], texts);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public async Task Only_the_programs_own_user_may_read_a_letter_whatever_the_folder_was_before()
    {
        using var data = new TestFolder();
        var letters = MailSettings.ReadFrom(Configuration(("data", data.Path))).CreateLetterFolder(new FakeClock(TestClinic.UsualNow));
        // As an earlier version left it.
        Directory.CreateDirectory(letters.Folder);
        File.SetUnixFileMode(letters.Folder, (UnixFileMode)0b111_101_101);

        await new FolderMailSender(letters).SendAsync(
            new Letter("ada@example.test", "Your link", "It works once."),
            LetterDelivery.ForSingleAttempt(),
            TestContext.Current.CancellationToken
        );

        Assert.Equal((UnixFileMode)0b111_000_000, File.GetUnixFileMode(letters.Folder));
        Assert.Equal((UnixFileMode)0b110_000_000, File.GetUnixFileMode(Assert.Single(Directory.GetFiles(letters.Folder))));
    }

    [Fact]
    public async Task A_new_folder_is_private_at_once()
    {
        using var data = new TestFolder();
        var letters = new LetterFolder(Path.Combine(data.Path, "mail"), named: false, new FakeClock(TestClinic.UsualNow));

        await new FolderMailSender(letters).SendAsync(
            new Letter("ada@example.test", "Your link", "It works once."),
            LetterDelivery.ForSingleAttempt(),
            TestContext.Current.CancellationToken
        );

        Assert.Equal((UnixFileMode)0b111_000_000, File.GetUnixFileMode(letters.Folder));
    }

    [Fact]
    public async Task Letters_go_after_a_week_and_those_to_somebody_erased_at_once()
    {
        using var data = new TestFolder();
        var clock = new FakeClock(TestClinic.UsualNow);
        var letters = new LetterFolder(data.Path, named: false, clock);
        await SendAsync("ada@example.test");
        clock.Advance(Duration.FromDays(6));
        await SendAsync("bo@example.test");
        await SendAsync("ada@example.test");
        clock.Advance(Duration.FromDays(1) + Duration.FromMilliseconds(1));

        Assert.Equal(1, letters.RemoveOld());
        Assert.Equal(0, letters.RemoveOld());
        Assert.Equal(1, letters.RemoveLettersTo(["ADA@example.test", "nobody@example.test"]));

        Assert.StartsWith("To: bo@example.test", Assert.Single(await letters.ListNewestAsync(5, TestContext.Current.CancellationToken)));

        Task SendAsync(string to) =>
            new FolderMailSender(letters).SendAsync(
                new Letter(to, "Your link", "It works once."),
                LetterDelivery.ForSingleAttempt(),
                TestContext.Current.CancellationToken
            );
    }

    [Fact]
    public void The_folder_lies_in_the_data_folder_unless_another_is_named()
    {
        Assert.Equal(Path.Combine("/data", "mail"), Read(("data", "/data")).Folder);
        Assert.Equal("/letters", Read(("data", "/data"), ("Mail:Folder", "/letters")).Folder);
    }

    private static MailSettings Read(params (string Key, string Value)[] settings) => MailSettings.ReadFrom(Configuration(settings));

    private static IConfiguration Configuration(params (string Key, string Value)[] settings) =>
        new ConfigurationBuilder().AddInMemoryCollection(settings.ToDictionary(s => s.Key, s => (string?)s.Value)).Build();
}
