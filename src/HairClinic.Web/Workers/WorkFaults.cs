using MailKit.Net.Smtp;
using Npgsql;

namespace HairClinic.Web.Workers;

/// <summary>
/// What went wrong, in a word for the log and the item. Never the exception's own text: a mail server's answer quotes the address,
/// and who a client is belongs in no log.
/// </summary>
public static class WorkFaults
{
    public static string Name(Exception e) =>
        e switch
        {
            SmtpCommandException smtp => $"{nameof(SmtpCommandException)} {(int)smtp.StatusCode}",
            PostgresException postgres => $"{nameof(PostgresException)} {postgres.SqlState}",
            { InnerException: PostgresException postgres } => $"{e.GetType().Name} {postgres.SqlState}",
            _ => e.GetType().Name,
        };
}
