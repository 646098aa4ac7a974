using HairClinic.Web.Data.EmbeddedPostgres;

namespace HairClinic.Web.Workers.Mail;

/// <summary>How letters leave: <c>Mail:Host</c> and so on in the configuration; without a host they go to a folder.</summary>
public sealed record MailSettings
{
    public string? Host { get; init; }

    public int Port { get; init; } = 587;

    public bool Tls { get; init; } = true;

    public string? User { get; init; }

    public string? Password { get; init; }

    public string From { get; init; } = "desk@localhost";

    /// <summary>The practice's discreet sender name; it names no service.</summary>
    public string FromName { get; init; } = "Your appointments";

    public string Folder { get; init; } = "";

    /// <summary>The address clients reach this site at, for the links in letters.</summary>
    public string SiteUrl { get; init; } = "http://127.0.0.1:5080";

    public static MailSettings ReadFrom(IConfiguration configuration)
    {
        var settings = configuration.GetSection("Mail").Get<MailSettings>() ?? new();
        var folder = settings.Folder.Length > 0 ? settings.Folder : Path.Combine(configuration["data"] ?? DefaultFolders.Data, "mail");
        return settings with { Folder = folder };
    }
}
