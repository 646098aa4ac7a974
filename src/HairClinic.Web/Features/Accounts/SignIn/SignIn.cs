using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Features.Accounts;

/// <summary>A person of the practice signs in: name and password, or a passkey that knows who they are.</summary>
public sealed class SignIn(StaffSignInManager accounts, AccountPasswordHasher hasher, SignInTries tries, SignInDelay pace)
{
    /// <summary>
    /// Unknown name, wrong password, locked account and someone who left are answered alike and take about as long, so that nobody
    /// learns who has an account.
    /// </summary>
    public async Task<Outcome> SaveAsync(Input input, CancellationToken cancellation)
    {
        await pace.WaitAsync(input.Name, cancellation);
        var user = await accounts.UserManager.FindByNameAsync(input.Name.Trim());
        var right = await tries.CountAndVerifyAsync(
            user,
            account => KnowsAsync(account, input.Password),
            pretend: () => hasher.SimulateVerification(input.Password),
            cancellation
        );
        if (user is null || !right || !await accounts.CanSignInAsync(user))
        {
            pace.Failed(input.Name);
            return Outcome.Refused;
        }
        if ((await accounts.EnterAfterPasswordAsync(user)).RequiresTwoFactor)
        {
            await tries.GiveBackAsync(user, cancellation);
            return Outcome.AsksForCode;
        }
        pace.Forget(input.Name);
        await tries.ForgiveAsync(user, cancellation);
        return Outcome.SignedIn;
    }

    /// <summary>A passkey opens also while too many wrong passwords have locked the account: those were somebody else's.</summary>
    /// <param name="credential">What the browser answered, as JSON.</param>
    public async Task<Outcome> SaveAsync(string credential)
    {
        if (await accounts.VerifyPasskeyAsync(credential) is not { } user || !await accounts.CanSignInAsync(user))
            return Outcome.Refused;
        await accounts.EnterAsync(user, SignInWay.Passkey);
        return Outcome.SignedIn;
    }

    private async Task<bool> KnowsAsync(AppUser user, string password)
    {
        if (user.PasswordHash is not null)
            return await accounts.UserManager.CheckPasswordAsync(user, password);
        hasher.SimulateVerification(password);
        return false;
    }

    public sealed record Input
    {
        public string Name { get; set; } = "";
        public string Password { get; set; } = "";
    }

    public enum Outcome
    {
        SignedIn,
        AsksForCode,
        Refused,
    }
}
