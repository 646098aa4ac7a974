using System.Security.Claims;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Accounts;

/// <summary>Builds a sign-in from the account and the person it belongs to: role and salons are read fresh each time.</summary>
public sealed class PersonClaimsFactory(UserManager<AppUser> users, IOptions<IdentityOptions> options, PracticeJobRunner jobs)
    : UserClaimsPrincipalFactory<AppUser>(users, options)
{
    protected override async Task<ClaimsIdentity> GenerateClaimsAsync(AppUser user)
    {
        var identity = await base.GenerateClaimsAsync(user);
        var person = await jobs.RunJobAsync(
            user.PracticeId,
            "sign-in",
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                return await db
                    .People.AsNoTracking()
                    .Where(p => p.Id == user.PersonId && !p.Left)
                    .Select(p => new
                    {
                        p.Name,
                        p.Role,
                        Salons = db
                            .Salons.Where(s => !s.Retired)
                            .Where(s => p.Role == StaffRole.Owner || p.Salons.Any(x => x.SalonId == s.Id))
                            .OrderBy(s => s.Name)
                            .Select(s => s.Id)
                            .ToList(),
                    })
                    .SingleOrDefaultAsync();
            }
        );
        // Someone who left keeps an account that opens nothing.
        if (person is not null)
        {
            var at = user.AtSalonId is { } chosen && person.Salons.Contains(chosen) ? chosen : person.Salons.Cast<Guid?>().FirstOrDefault();
            identity.AddClaims(ActorClaims.For(new PersonActor(user.PracticeId, user.PersonId, person.Role, person.Salons, at)));
            identity.AddClaim(new Claim(ActorClaims.DisplayName, person.Name));
        }
        return identity;
    }
}
