using HairClinic.Domain.Practices;
using HairClinic.Web.Practices;

namespace HairClinic.Web.Data.Accounts;

/// <summary>Asks, when something grave is saved, whether its person proved a moment ago who they are.</summary>
public sealed class StepUpCheck(CurrentActor current, SessionBook sessions)
{
    public const string Page = "/step-up";

    public const string Sentence =
        "This asks you to prove anew that it is you. Open {0} in another tab, do it there, and save again here: what you typed stays.";

    public async Task<bool> IsFreshAsync(CancellationToken cancellation) =>
        current.OrNull is PersonActor { SessionId: { } session } && await sessions.IsFreshAsync(session, cancellation);

    /// <exception cref="Refusal">They did not, in the last ten minutes.</exception>
    public async Task RequireAsync(CancellationToken cancellation)
    {
        if (!await IsFreshAsync(cancellation))
            throw new Refusal(Sentence, Page);
    }
}
