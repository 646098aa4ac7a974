using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Accounts;

/// <summary>The salon a person's screens speak of, until they choose another.</summary>
public sealed class ChooseSalon(SignInManager<AppUser> accounts, CurrentActor current)
{
    /// <returns>Whether the salon is one of theirs.</returns>
    public async Task<bool> SaveAsync(Guid salonId, CancellationToken cancellation)
    {
        var person = current.Person;
        if (!person.Salons.Contains(salonId))
            return false;
        var user = await accounts.UserManager.Users.SingleAsync(
            u => u.PracticeId == person.PracticeId && u.PersonId == person.PersonId,
            cancellation
        );
        user.AtSalonId = salonId;
        await accounts.UserManager.UpdateAsync(user);
        await accounts.RefreshSignInAsync(user);
        return true;
    }
}
