using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Demo;

/// <summary>
/// The demo's sign-ins: one password that everybody may read. They exist only in a database whose only practice is
/// the demo, and go with it.
/// </summary>
public sealed class DemoAccounts(UserManager<AppUser> users, ClinicDbFactory databases, PracticeJobRunner jobs)
{
    public const string Password = "quiet-harbour-demo";

    public static IReadOnlyList<SignIn> All { get; } =
    [.. DemoPractice.People.Select(p => new SignIn(Address(p), p.Name, p.Role.ToString()))];

    /// <exception cref="InvalidOperationException">An account could not be made.</exception>
    public async Task CreateAsync(Guid practiceId, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var people = await db.People.AsNoTracking().ToListAsync(cancellation);
        foreach (var person in DemoPractice.People)
        {
            var user = new AppUser
            {
                Id = Guid.CreateVersion7(),
                UserName = Address(person),
                Email = Address(person),
                EmailConfirmed = true,
                PracticeId = practiceId,
                PersonId = people.Single(p => p.Name == person.Name).Id,
            };
            var made = await users.CreateAsync(user, Password);
            if (!made.Succeeded)
                throw new InvalidOperationException($"The demo sign-in {user.UserName} was not made: {made.Errors.First().Description}");
        }
    }

    /// <summary>Whether this database holds the demo and nothing else, so that its sign-ins may be shown to anybody.</summary>
    public async Task<bool> MayBeShownAsync(CancellationToken cancellation)
    {
        var practices = await jobs.PracticeIdsAsync(cancellation);
        return practices.Count == 1
            && await jobs.RunJobAsync(
                practices[0],
                "demo sign-ins",
                async services =>
                {
                    await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                    return await db.PracticeSettings.AnyAsync(s => s.IsDemo, cancellation);
                }
            );
    }

    private static string Address(DemoPerson person) => $"{person.SignIn}@demo.test";

    public sealed record SignIn(string Name, string Person, string Role);
}

/// <param name="SignIn">What stands before the @ of their demo sign-in.</param>
public sealed record DemoPerson(string Name, StaffRole Role, string SignIn, IReadOnlyList<DemoSalon> Salons);
