using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Accounts;
using Microsoft.AspNetCore.Identity;

namespace HairClinic.Web.Features.Accounts.ChangePassword;

/// <summary>One's own password. Every other screen of theirs ends; the one they are at goes on.</summary>
public sealed class ChangePassword(ClinicSignIns accounts, OwnAccount own)
{
    /// <exception cref="Refusal">The present password is another, or the new one is one of those that are guessed first.</exception>
    public async Task SaveAsync(Input input, CancellationToken cancellation)
    {
        var user = await own.ReadAsync(cancellation);
        var result = await accounts.UserManager.ChangePasswordAsync(user, input.Present, input.Password);
        if (!result.Succeeded)
            throw new Refusal(
                result.Errors.Any(e => e.Code == nameof(IdentityErrorDescriber.PasswordMismatch))
                    ? "That is not your present password."
                    : result.Errors.First().Description
            );
        await own.ChangedAsync(user, "Your password was changed.", cancellation);
    }

    public sealed record Input
    {
        public string Present { get; set; } = "";

        public string Password { get; set; } = "";

        public string Again { get; set; } = "";
    }
}
