using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Features.Accounts;

/// <summary>
/// Someone who is signed in proves anew that it is them: by a passkey, or by their password, and where they have a codes app by both
/// password and code. A code alone is not enough: a phone left on the desk shows it to anybody.
/// </summary>
public sealed class StepUp(
    StaffSignInManager accounts,
    CurrentAccount own,
    SecondFactorStore factor,
    SignInTries tries,
    SessionStore sessions,
    SignInDelay pace
)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        var user = await own.ReadAsync(cancellation);
        var passkeys = await accounts.UserManager.GetPasskeysAsync(user);
        return new Screen(user.PasswordHash is not null, user.TwoFactorEnabled, passkeys.Count > 0);
    }

    /// <returns>Whether they proved it.</returns>
    public async Task<bool> SaveAsync(Input input, CancellationToken cancellation)
    {
        var user = await own.ReadAsync(cancellation);
        await pace.WaitAsync(user.UserName!, cancellation);
        var proved = await tries.CountAndVerifyAsync(
            user,
            async account =>
                await accounts.UserManager.CheckPasswordAsync(account, input.Password)
                && await CodeFitsAsync(account, input.Code, cancellation),
            pretend: () => { },
            cancellation
        );
        if (!proved)
        {
            pace.Failed(user.UserName!);
            return false;
        }
        pace.Forget(user.UserName!);
        await tries.ForgiveAsync(user, cancellation);
        return await FreshenAsync(cancellation);
    }

    /// <param name="credential">What the browser answered, as JSON.</param>
    public async Task<bool> SaveAsync(string credential, CancellationToken cancellation)
    {
        var user = await own.ReadAsync(cancellation);
        return (await accounts.VerifyPasskeyAsync(credential))?.Id == user.Id && await FreshenAsync(cancellation);
    }

    private async Task<bool> CodeFitsAsync(AppUser user, string? code, CancellationToken cancellation) =>
        !user.TwoFactorEnabled
        || code is { Length: > 0 }
            && (await factor.RedeemAppCodeAsync(user, code, cancellation) || await factor.RedeemRecoveryCodeAsync(user, code));

    private async Task<bool> FreshenAsync(CancellationToken cancellation)
    {
        if (own.Session is not { } session)
            return false;
        await sessions.RecordStepUpAsync(session, cancellation);
        return true;
    }

    public sealed record Screen(bool HasPassword, bool HasCodes, bool HasPasskey);

    public sealed record Input
    {
        public string Password { get; set; } = "";
        public string? Code { get; set; }
    }
}
