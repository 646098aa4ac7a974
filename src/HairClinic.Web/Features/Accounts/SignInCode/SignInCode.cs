using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;
using Microsoft.AspNetCore.Authentication;

namespace HairClinic.Web.Features.Accounts;

/// <summary>The second step of signing in: after the password, the code of the codes app, or a recovery code.</summary>
public sealed class SignInCode(StaffSignInManager accounts, SecondFactorStore factor, SignInTries tries, SignInDelay pace)
{
    /// <returns>Whether somebody typed their password a moment ago on this device.</returns>
    public async Task<bool> OpenAsync() => await accounts.GetTwoFactorAuthenticationUserAsync() is not null;

    public async Task<Outcome> SaveAsync(Input input, CancellationToken cancellation)
    {
        if (await accounts.GetTwoFactorAuthenticationUserAsync() is not { } user)
            return Outcome.TooLate;
        var name = user.UserName!;
        await pace.WaitAsync(name, cancellation);
        if (!await accounts.CanSignInAsync(user))
            return Outcome.Refused;
        SignInWay? way = null;
        var opens = await tries.CountAndVerifyAsync(
            user,
            async account => (way = await ProofAsync(account, input.Code, cancellation)) is not null,
            pretend: () => { },
            cancellation
        );
        if (!opens)
        {
            pace.Failed(name);
            return Outcome.Refused;
        }
        pace.Forget(name);
        await tries.ForgiveAsync(user, cancellation);
        await accounts.Context.SignOutAsync(IdentityConstants.TwoFactorUserIdScheme);
        await accounts.EnterAsync(user, way!.Value);
        return Outcome.SignedIn;
    }

    private async Task<SignInWay?> ProofAsync(AppUser user, string code, CancellationToken cancellation) =>
        await factor.RedeemAppCodeAsync(user, code, cancellation) ? SignInWay.PasswordAndCode
        : await factor.RedeemRecoveryCodeAsync(user, code) ? SignInWay.PasswordAndRecoveryCode
        : null;

    public sealed record Input
    {
        public string Code { get; set; } = "";
    }

    public enum Outcome
    {
        SignedIn,
        Refused,

        /// <summary>The password was typed too long ago.</summary>
        TooLate,
    }
}
