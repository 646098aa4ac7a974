using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Accounts;

/// <summary>Makes accounts to be saved together with what they belong to.</summary>
public sealed class AccountFactory(UserManager<AppUser> users, HashingQueue hashing)
{
    public const string NameOnce = "ux_users_normalized_user_name";

    /// <param name="password">Null where a link will set it.</param>
    /// <exception cref="Refusal">The password is one of those that are guessed first.</exception>
    public async Task<AppUser> BuildAsync(Guid practiceId, Guid personId, string name, string? email, string? password)
    {
        var user = new AppUser
        {
            Id = Guid.CreateVersion7(),
            PracticeId = practiceId,
            PersonId = personId,
            LockoutEnabled = true,
        };
        SetNameAndEmail(user, name, email);
        await SetPasswordAsync(user, password);
        return user;
    }

    public void SetNameAndEmail(AppUser user, string name, string? email)
    {
        user.UserName = name.Trim();
        user.NormalizedUserName = users.NormalizeName(user.UserName);
        user.Email = email.NullIfBlank();
        user.NormalizedEmail = users.NormalizeEmail(user.Email);
    }

    /// <summary>Sets it, if given, and ends all sessions opened with the old one.</summary>
    /// <exception cref="Refusal">The password is one of those that are guessed first.</exception>
    public async Task SetPasswordAsync(AppUser user, string? password)
    {
        user.SecurityStamp ??= Guid.NewGuid().ToString("N");
        if (string.IsNullOrEmpty(password))
            return;
        foreach (var rule in users.PasswordValidators)
        {
            if (await rule.ValidateAsync(users, user, password) is { Succeeded: false } refused)
                throw new Refusal(refused.Errors.First().Description);
        }
        user.PasswordHash = await hashing.RunAsync(() => users.PasswordHasher.HashPassword(user, password), CancellationToken.None);
        user.SecurityStamp = Guid.NewGuid().ToString("N");
    }
}
