using HairClinic.Web.Data.Work;

namespace HairClinic.Web.Mail;

/// <summary>Where no mail server is named: each letter becomes a text file.</summary>
public sealed class FolderRoute(LetterFolder folder) : IMailRoute
{
    public Task SendAsync(Letter letter, Posting posting, CancellationToken cancellation) =>
        folder.WriteAsync(letter, posting.Id, cancellation);
}
