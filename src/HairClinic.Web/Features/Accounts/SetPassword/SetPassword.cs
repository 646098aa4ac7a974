using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;
using Microsoft.AspNetCore.WebUtilities;

namespace HairClinic.Web.Features.Accounts;

/// <summary>Someone who was handed a one-time link chooses a password. A wrong link and an unknown account answer alike.</summary>
public sealed class SetPassword(
    UserManager<AppUser> users,
    HashingQueue hashing,
    SignInTries tries,
    SessionStore sessions,
    AccountNotices notices
)
{
    private const string BadLink = "This link was used already, is older than a day, or is not whole. Ask your manager for a new one.";

    /// <exception cref="Refusal">The link does not open, or the password is one of those that are guessed first.</exception>
    public async Task SaveAsync(Input input, CancellationToken cancellation)
    {
        if (
            !Guid.TryParse(input.For, out var id)
            || await users.FindByIdAsync(id.ToString()) is not { } user
            || Token(input.Token) is not { } token
        )
            throw new Refusal(BadLink);
        // A link from the machine's own command line is bound to the same stamp, and shorter lived.
        if (await users.VerifyUserTokenAsync(user, OwnerTokenProvider.Provider, UserManager<AppUser>.ResetPasswordTokenPurpose, token))
            token = await users.GeneratePasswordResetTokenAsync(user);
        var result = await hashing.RunAsync(() => users.ResetPasswordAsync(user, token, input.Password), cancellation);
        if (!result.Succeeded)
            throw new Refusal(
                result.Errors.Any(e => e.Code == nameof(IdentityErrorDescriber.InvalidToken)) ? BadLink : result.Errors.First().Description
            );
        await tries.ForgiveAsync(user, cancellation);
        await sessions.EndAllAsync(user.Id, except: null, SessionEnd.SignInChanged, cancellation);
        await notices.NotifyAsync(user, "A new password was set for your sign-in.", cancellation);
    }

    private static string? Token(string? text)
    {
        try
        {
            return Encoding.UTF8.GetString(WebEncoders.Base64UrlDecode(text ?? ""));
        }
        catch (FormatException)
        {
            return null;
        }
    }

    public sealed record Input
    {
        /// <summary>The account's id as the link names it; null in a link that is not whole.</summary>
        public string? For { get; set; }

        public string? Token { get; set; }
        public string Password { get; set; } = "";
        public string Again { get; set; } = "";
    }
}
