using HairClinic.Web.Accounts;

namespace HairClinic.Web.Features.Accounts;

/// <summary>The codes app is no longer asked for, and its recovery codes open nothing.</summary>
public sealed class RemoveAuthenticatorApp(CurrentAccount own, SecondFactorStore factor, StepUpCheck check)
{
    public async Task SaveAsync(CancellationToken cancellation)
    {
        await check.RefuseUnlessFreshAsync(cancellation);
        var user = await own.ReadAsync(cancellation);
        await factor.TurnOffAsync(user, cancellation);
        await own.EndOtherSessionsAndNotifyAsync(user, "A codes app is no longer asked for at your sign-in.", cancellation);
    }
}
