using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Mail;

namespace HairClinic.Web.Features.MyHair;

/// <summary>A client asks for a link to their own page. The answer and its time are the same whether or not anyone has that address.</summary>
public sealed class AskLink(ClinicDbFactory databases, LinkAskQueue asks, MailStatusMonitor mail)
{
    /// <returns>How links leave here; null while none can be sent, and then nothing is taken down.</returns>
    public async Task<MailWay?> SaveAsync(Input input, CancellationToken cancellation)
    {
        var state = await mail.CheckReadinessAsync(cancellation);
        if (!state.CanSendLinks)
            return null;
        await using var unfenced = databases.OpenWithoutActor();
        await asks.AskAsync(unfenced, input.Email, cancellation);
        return state.Way;
    }

    public sealed record Input
    {
        public string Email { get; set; } = "";
    }
}

public sealed class AskLinkRules : AbstractValidator<AskLink.Input>
{
    public AskLinkRules() => RuleFor(x => x.Email).NotEmpty().EmailAddress().WithMessage("Type the e-mail address your salon knows.");
}
