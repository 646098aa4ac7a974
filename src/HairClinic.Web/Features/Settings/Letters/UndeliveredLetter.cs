using HairClinic.Web.Data.Work;
using HairClinic.Web.Mail;

namespace HairClinic.Web.Features.Settings;

/// <summary>A letter that did not go and is not tried again, or may not have gone.</summary>
/// <param name="Day">On which it was asked for, at the first salon.</param>
/// <param name="Client">The code of the client it was to; null for others, and for clients whom the reader may not see.</param>
/// <param name="IsToClient">Whether it was to a client at all.</param>
/// <param name="Fault">As <see cref="WorkFaults"/> names it.</param>
public sealed record UndeliveredLetter(LetterKind Kind, LocalDate Day, string? Client, bool IsToClient, WorkOutcome Fate, string? Fault)
{
    private const string Refused = "SmtpCommandException 5";

    /// <summary>To whom; the first blank is the client's code.</summary>
    public string ToWhom =>
        Client is not null ? "client {0}"
        : IsToClient ? "a client of another salon"
        : Kind is LetterKind.SignInChanged ? "staff"
        : "somebody: whose letter it was is not known";

    /// <summary>Why, a sentence or two.</summary>
    public IEnumerable<string> Why() =>
        Fate switch
        {
            WorkOutcome.Unsure =>
            [
                "The line broke while it was being handed over: it may have gone, or not. It is not sent again by itself.",
            ],
            _ when Fault is WorkFaults.TooLate => ["It could not leave before what it leads to had run out."],
            _ when Fault is nameof(NoMailWayException) => ["No mail server was set."],
            _ when Fault?.StartsWith(Refused, StringComparison.Ordinal) is true
                    && MailReadiness.DescribeFaultCode(Fault) == MailReadiness.DescribeFaultCode(null) =>
            [
                "The mail server refused it for good: the address may be wrong, or the mailbox gone.",
            ],
            _ => [MailReadiness.DescribeFaultCode(Fault), "It was tried again until that was of no more use."],
        };
}
