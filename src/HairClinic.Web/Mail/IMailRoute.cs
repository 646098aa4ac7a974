using HairClinic.Web.Data.Work;

namespace HairClinic.Web.Mail;

public interface IMailRoute
{
    /// <exception cref="LetterUnsureException">The line broke while it was being handed over: nobody knows whether it went.</exception>
    Task SendAsync(Letter letter, Posting posting, CancellationToken cancellation);
}
