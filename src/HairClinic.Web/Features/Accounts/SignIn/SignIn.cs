using HairClinic.Web.Data.Accounts;
using Microsoft.AspNetCore.Identity;

namespace HairClinic.Web.Features.Accounts.SignIn;

/// <summary>A person of the practice signs in with name and password.</summary>
public sealed class SignIn(SignInManager<AppUser> accounts)
{
    /// <summary>Wrong name and wrong password answer alike, so that nobody learns who has an account.</summary>
    public async Task<Outcome> SaveAsync(Input input)
    {
        var result = await accounts.PasswordSignInAsync(input.Name.Trim(), input.Password, isPersistent: false, lockoutOnFailure: true);
        return result.Succeeded ? Outcome.SignedIn : Outcome.Refused;
    }

    public sealed record Input
    {
        public string Name { get; set; } = "";

        public string Password { get; set; } = "";
    }

    public enum Outcome
    {
        SignedIn,
        Refused,
    }
}
