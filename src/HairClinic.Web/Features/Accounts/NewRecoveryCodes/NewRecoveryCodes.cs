using HairClinic.Web.Accounts;

namespace HairClinic.Web.Features.Accounts;

/// <summary>A new set of recovery codes; the old ones open nothing any more.</summary>
public sealed class NewRecoveryCodes(CurrentAccount own, SecondFactorStore factor, AccountNotices notices, StepUpCheck check)
{
    /// <exception cref="Refusal">There is no codes app they would stand in for.</exception>
    public async Task<IReadOnlyList<string>> SaveAsync(CancellationToken cancellation)
    {
        await check.RefuseUnlessFreshAsync(cancellation);
        var user = await own.ReadAsync(cancellation);
        if (!user.TwoFactorEnabled)
            throw new Refusal("Recovery codes stand in for a codes app. Set one up first.");
        var codes = await factor.NewRecoveryCodesAsync(user, cancellation);
        await notices.NotifyAsync(user, "New recovery codes were made for your sign-in.", cancellation);
        return codes;
    }
}
