using System.Security.Claims;
using HairClinic.Web.Practices;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;

namespace HairClinic.Web.Data.Accounts;

/// <summary>Builds a sign-in from the account and the person it belongs to: role and salons are read fresh each time.</summary>
public sealed class PersonClaims(UserManager<AppUser> users, IOptions<IdentityOptions> options, PracticeJobs jobs)
    : UserClaimsPrincipalFactory<AppUser>(users, options)
{
    protected override async Task<ClaimsIdentity> GenerateClaimsAsync(AppUser user)
    {
        var identity = await base.GenerateClaimsAsync(user);
        var person = await jobs.RunAsync(
            user.PracticeId,
            "sign-in",
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                return await db
                    .People.AsNoTracking()
                    .Where(p => p.Id == user.PersonId && !p.Left)
                    .Select(p => new { p.Name, p.Role, Salons = p.Salons.Select(s => s.SalonId).ToList() })
                    .SingleOrDefaultAsync();
            }
        );
        // Someone who left keeps an account that opens nothing.
        if (person is not null)
        {
            identity.AddClaims(ActorClaims.For(new PersonActor(user.PracticeId, user.PersonId, person.Role, person.Salons)));
            identity.AddClaim(new Claim(ActorClaims.DisplayName, person.Name));
        }
        return identity;
    }
}
