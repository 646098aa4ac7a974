using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Accounts;

/// <summary>The password rule with the names in the book, asked by whatever sets a password.</summary>
public sealed class PasswordValidator(PracticeJobRunner jobs) : IPasswordValidator<AppUser>
{
    public async Task<IdentityResult> ValidateAsync(UserManager<AppUser> manager, AppUser user, string? password)
    {
        var names = await jobs.RunJobAsync(user.PracticeId, "password", services => NamesAsync(services, user.PersonId));
        return PasswordRule.Fault(password, [user.UserName, user.Email, .. names]) is { } fault
            ? IdentityResult.Failed(new IdentityError { Code = nameof(PasswordRule), Description = fault })
            : IdentityResult.Success;
    }

    private static async Task<IReadOnlyList<string>> NamesAsync(IServiceProvider services, Guid personId)
    {
        await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
        return await db
            .PracticeSettings.Select(s => s.Name)
            .Concat(db.Salons.Select(s => s.Name))
            .Concat(db.People.Where(p => p.Id == personId).Select(p => p.Name))
            .ToListAsync();
    }
}
