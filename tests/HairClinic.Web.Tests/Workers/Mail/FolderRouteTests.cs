using HairClinic.Web.Workers;
using HairClinic.Web.Workers.Mail;
using Microsoft.Extensions.Configuration;

namespace HairClinic.Web.Tests.Workers.Mail;

public sealed class FolderRouteTests(PgServer server)
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
                        WorkItems.Send(new("a@example.test", "One", "First."), scene.Now),
                        WorkItems.Send(new("b@example.test", "Two", "Second."), scene.Now)
                    )
            );

            await Letterbox.WorkAsync(clinic, new FolderRoute(new MailSettings { Folder = mail }, clinic.Clock));

            var texts = Directory.GetFiles(mail, "20270203T100000000-*.txt").Select(File.ReadAllText).Order();
            Assert.Equal(["To: a@example.test\nSubject: One\n\nFirst.\n", "To: b@example.test\nSubject: Two\n\nSecond.\n"], texts);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void The_folder_lies_in_the_data_folder_unless_another_is_named()
    {
        Assert.Equal(Path.Combine("/data", "mail"), Read(("data", "/data")).Folder);
        Assert.Equal("/letters", Read(("data", "/data"), ("Mail:Folder", "/letters")).Folder);
    }

    private static MailSettings Read(params (string Key, string Value)[] settings) =>
        MailSettings.ReadFrom(
            new ConfigurationBuilder().AddInMemoryCollection(settings.ToDictionary(s => s.Key, s => (string?)s.Value)).Build()
        );
}
