using HairClinic.Web.Data.Work;

namespace HairClinic.Web.Mail;

/// <summary>Where no mail server is named: each letter becomes a text file.</summary>
public sealed class FolderMailSender(LetterFolder folder) : IMailSender
{
    public Task SendAsync(Letter letter, LetterDelivery posting, CancellationToken cancellation) =>
        folder.WriteAsync(letter, posting.Id, cancellation);
}

/// <summary>One letter's way to the mail server.</summary>
/// <param name="Id">The same each time the letter is tried: its Message-ID comes from it.</param>
/// <param name="HandingOver">Is waited for before the first word of the letter leaves; where it throws, nothing leaves.</param>
public sealed record LetterDelivery(Guid Id, Func<Task> HandingOver)
{
    /// <summary>For what is sent at once and by hand.</summary>
    public static LetterDelivery ForSingleAttempt() => new(Guid.CreateVersion7(), () => Task.CompletedTask);
}
