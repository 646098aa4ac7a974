namespace HairClinic.Web.Mail;

/// <summary>What becomes of a letter.</summary>
public enum MailWay
{
    /// <summary>No mail server is set: it is not sent, and not kept either.</summary>
    None,

    /// <summary>The practice's mail server takes it.</summary>
    Server,

    /// <summary>It becomes a file in the folder that somebody named, to try things out.</summary>
    Folder,

    /// <summary>It becomes a file that the demo shows to anybody.</summary>
    Demo,
}
