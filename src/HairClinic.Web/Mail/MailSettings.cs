using HairClinic.EmbeddedPostgres;
using HairClinic.Web.Data.Work;
using MimeKit;

namespace HairClinic.Web.Mail;

/// <summary>How letters leave: <c>Mail:Host</c> and so on in the configuration. deploy/README.md has the table; an empty setting counts as none.</summary>
public sealed record MailSettings
{
    /// <summary>The mail server; without it letters are not sent.</summary>
    public string? Host { get; init; }

    public int Port { get; init; } = 587;
    public bool Tls { get; init; } = true;
    public string? User { get; init; }
    public string? Password { get; init; }

    /// <summary>The address letters come from; asked for together with <see cref="Host"/>.</summary>
    public string From { get; init; } = "desk@localhost";

    /// <summary>The practice's discreet sender name; it names no service.</summary>
    public string FromName { get; init; } = "Your appointments";

    /// <summary>Where letters become files while there is no mail server: the demo's, or those of somebody who tries things out and names it.</summary>
    public string Folder { get; init; } = "";

    internal bool FolderNamed { get; init; }

    /// <exception cref="InvalidOperationException">A setting that no letter could be sent with.</exception>
    public static MailSettings ReadFrom(IConfiguration configuration)
    {
        // A container passes every setting, unset ones as empty text.
        var filled = configuration.GetSection("Mail").GetChildren().Where(s => !string.IsNullOrWhiteSpace(s.Value));
        var settings = new ConfigurationBuilder()
            .AddInMemoryCollection(filled.ToDictionary(s => s.Key, s => s.Value))
            .Build()
            .Get<MailSettings>(options => options.ErrorOnUnknownConfiguration = true);
        settings ??= new();
        if (settings.Host is not null)
            settings.RefuseUnusable();
        var named = settings.Folder.Length > 0;
        var folder = named ? settings.Folder : Path.Combine(configuration["data"] ?? DefaultFolders.Data, "mail");
        return settings with { Folder = folder, FolderNamed = named };
    }

    public LetterFolder CreateLetterFolder(IClock clock) => new(Folder, FolderNamed, clock);

    private void RefuseUnusable()
    {
        if (Port is < 1 or > 65535)
            throw new InvalidOperationException("Mail__Port is a number from 1 to 65535, such as 587.");
        if (From == new MailSettings().From || !MailboxAddress.TryParse(From, out var from) || !from.Address.Contains('@'))
            throw new InvalidOperationException(
                "Mail__From is needed with Mail__Host: the address letters come from, such as desk@practice.example."
            );
    }
}
