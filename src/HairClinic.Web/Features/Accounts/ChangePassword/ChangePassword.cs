using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Accounts;
using HairClinic.Web.Practices;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace HairClinic.Web.Features.Accounts.ChangePassword;

/// <summary>One's own password. Every other screen of theirs ends; the one they are at goes on.</summary>
public sealed class ChangePassword(SignInManager<AppUser> accounts, CurrentActor current)
{
    /// <exception cref="Refusal">The present password is another, or the new one is too short.</exception>
    public async Task SaveAsync(Input input, CancellationToken cancellation)
    {
        var person = current.Person;
        var user = await accounts.UserManager.Users.SingleAsync(
            u => u.PracticeId == person.PracticeId && u.PersonId == person.PersonId,
            cancellation
        );
        var result = await accounts.UserManager.ChangePasswordAsync(user, input.Present, input.Password);
        if (!result.Succeeded)
            throw new Refusal(
                result.Errors.Any(e => e.Code == nameof(IdentityErrorDescriber.PasswordMismatch))
                    ? "That is not your present password."
                    : PasswordRule.Sentence
            );
        await accounts.RefreshSignInAsync(user);
    }

    public sealed record Input
    {
        public string Present { get; set; } = "";

        public string Password { get; set; } = "";

        public string Again { get; set; } = "";
    }
}
