using HairClinic.Web.Accounts;

namespace HairClinic.Web.Features.Accounts;

/// <summary>One's own password. Every other screen of theirs ends; the one they are at goes on.</summary>
public sealed class ChangePassword(StaffSignInManager accounts, CurrentAccount own, SignInTries tries)
{
    /// <exception cref="Refusal">The present password is another, or the new one is one of those that are guessed first.</exception>
    public async Task SaveAsync(Input input, CancellationToken cancellation)
    {
        var user = await own.ReadAsync(cancellation);
        IdentityResult? result = null;
        var knows = await tries.CountAndVerifyAsync(
            user,
            async account =>
            {
                result = await accounts.UserManager.ChangePasswordAsync(account, input.Present, input.Password);
                return result.Errors.All(e => e.Code != nameof(IdentityErrorDescriber.PasswordMismatch));
            },
            pretend: () => { },
            cancellation
        );
        if (!knows)
            throw new Refusal(
                result is null ? "There were too many wrong tries. Wait ten minutes, then try again." : "That is not your present password."
            );
        // Not all is forgiven: a codes app may have a say besides.
        await tries.GiveBackAsync(user, cancellation);
        if (!result!.Succeeded)
            throw new Refusal(result.Errors.First().Description);
        await own.EndOtherSessionsAndNotifyAsync(user, "Your password was changed.", cancellation);
    }

    public sealed record Input
    {
        public string Present { get; set; } = "";
        public string Password { get; set; } = "";
        public string Again { get; set; } = "";
    }
}
