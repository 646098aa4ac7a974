using HairClinic.Web.Fence;

namespace HairClinic.Web.Accounts;

/// <summary>Requires a fresh sign-in before something irreversible is saved.</summary>
public sealed class StepUpCheck(CurrentActor current, SessionStore sessions, ClientSessionStore clients)
{
    public const string Page = "/step-up";

    /// <summary>A client has no password: they prove it by a new link, which this page of theirs sends.</summary>
    public const string ClientPage = "/my-hair/take-my-data";

    public const string Sentence =
        "This asks you to prove anew that it is you. Open {0} in another tab, do it there, and save again here: what you typed stays.";

    public async Task<bool> IsFreshAsync(CancellationToken cancellation) =>
        current.OrNull switch
        {
            PersonActor { SessionId: { } session } => await sessions.IsFreshAsync(session, cancellation),
            ClientActor client => await clients.IsFreshAsync(client, cancellation),
            _ => false,
        };

    /// <summary>Where the actor is sent to do so.</summary>
    public string PageFor(string wanted) => current.OrNull is ClientActor ? ClientPage : $"{Page}?return={Uri.EscapeDataString(wanted)}";

    /// <exception cref="Refusal">They did not, in the last ten minutes.</exception>
    public async Task RefuseUnlessFreshAsync(CancellationToken cancellation)
    {
        if (!await IsFreshAsync(cancellation))
            throw new Refusal(Sentence, Page);
    }
}
