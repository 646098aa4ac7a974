using MailKit.Net.Smtp;

namespace HairClinic.Web.Mail;

/// <summary>
/// What went wrong, in a word for the log and the item. Never the exception's own text: a mail server's answer quotes the address,
/// and who a client is belongs in no log.
/// </summary>
public static class WorkFaults
{
    /// <summary>What a letter leads to had run out before it could leave.</summary>
    public const string TooLate = "TooLate";

    /// <summary>The worker stopped while handing the letter over.</summary>
    public const string Interrupted = "Interrupted";

    public static string NameOf(Exception e) =>
        e switch
        {
            LetterUnsureException { InnerException: { } line } => NameOf(line),
            SmtpCommandException smtp => $"{nameof(SmtpCommandException)} {(int)smtp.StatusCode}",
            PostgresException postgres => $"{nameof(PostgresException)} {postgres.SqlState}",
            { InnerException: PostgresException postgres } => $"{e.GetType().Name} {postgres.SqlState}",
            _ => e.GetType().Name,
        };

    /// <summary>
    /// Whether the mail server will never take this letter: it answered with 5yz, "the exact request should not be repeated" (RFC 5321,
    /// 4.2.1). That it does not let the site in at all is put right by whoever runs it, and then the letter goes.
    /// </summary>
    public static bool IsPermanent(Exception e) =>
        e is SmtpCommandException { ErrorCode: not SmtpErrorCode.UnexpectedStatusCode } smtp
        && (int)smtp.StatusCode is >= 500 and not (530 or 534 or 535 or 538);
}
