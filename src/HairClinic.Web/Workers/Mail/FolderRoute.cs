using NodaTime;
using NodaTime.Text;

namespace HairClinic.Web.Workers.Mail;

/// <summary>Where no mail server is named: each letter becomes a text file, for the demo and for trying things out.</summary>
public sealed class FolderRoute(MailSettings settings, IClock clock) : IMailRoute
{
    private static readonly InstantPattern Name = InstantPattern.CreateWithInvariantCulture("uuuuMMdd'T'HHmmssfff");

    public string Folder => settings.Folder;

    public async Task SendAsync(Letter letter, CancellationToken cancellation)
    {
        Directory.CreateDirectory(Folder);
        var file = Path.Combine(Folder, $"{Name.Format(clock.GetCurrentInstant())}-{Guid.CreateVersion7():N}.txt");
        await File.WriteAllTextAsync(file, $"To: {letter.To}\nSubject: {letter.Subject}\n\n{letter.Text}\n", cancellation);
    }
}
