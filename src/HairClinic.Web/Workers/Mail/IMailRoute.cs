namespace HairClinic.Web.Workers.Mail;

/// <summary>The way a letter leaves the house.</summary>
public interface IMailRoute
{
    Task SendAsync(Letter letter, CancellationToken cancellation);
}
