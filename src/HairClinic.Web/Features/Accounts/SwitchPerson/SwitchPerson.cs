using HairClinic.Web.Accounts;
using HairClinic.Web.Accounts.Tablets;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Accounts;

/// <summary>
/// At a shared tablet somebody takes over: their name, their PIN. What the one before had open does not pass on, but for the visit, and
/// that only to someone who may see it.
/// </summary>
public sealed class SwitchPerson(TabletStore tablets, PinStore pins, StaffSignInManager accounts, PracticeJobRunner jobs, IClock clock)
{
    /// <summary>Who signed in fully here in the last twelve hours, whether or not they have a PIN.</summary>
    /// <returns>Null where this browser is no shared tablet (any more).</returns>
    public async Task<Screen?> OpenAsync(CancellationToken cancellation)
    {
        if (await tablets.FindCurrentAsync(cancellation) is not { } tablet)
        {
            tablets.DeleteCookie();
            return null;
        }
        var now = clock.GetCurrentInstant();
        var people = await jobs.RunJobAsync(
            tablet.PracticeId,
            "switch",
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                var here = SessionStore.FullSessionsAt(db, tablet.Id, now).Select(s => s.PersonId);
                return await db
                    .People.Where(p => !p.Left && here.Contains(p.Id))
                    .OrderBy(p => p.Name)
                    .Select(p => new { p.Id, p.Name })
                    .ToListAsync(cancellation);
            }
        );
        return new Screen(tablet.Name, [.. people.Select(p => PersonTile.For(p.Id, p.Name))]);
    }

    /// <returns>Null: it opened nothing, for whichever reason.</returns>
    public async Task<Outcome?> SaveAsync(Input input, CancellationToken cancellation)
    {
        if (await tablets.FindCurrentAsync(cancellation) is not { } tablet)
            return null;
        if (
            await pins.CountAndCheckAsync(tablet, input.Who, input.Pin, cancellation) is not { } user
            || !await accounts.CanSignInAsync(user)
        )
            return null;
        var room = input.Visit is { } visit && await MaySeeAsync(user, visit, cancellation) ? $"/visits/{visit}/visit-details" : "/";
        await accounts.EnterAsync(user, SignInWay.Pin);
        return new Outcome(room);
    }

    private async Task<bool> MaySeeAsync(AppUser user, Guid visitId, CancellationToken cancellation) =>
        ActorClaims.ToActor(await accounts.CreateUserPrincipalAsync(user)) is { } actor
        && await jobs.RunAsAsync(
            actor,
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                return await db.Visits.AnyAsync(v => v.Id == visitId, cancellation);
            }
        );

    public sealed record Screen(string Tablet, IReadOnlyList<PersonTile> People);

    /// <summary>As much of a person as a screen everybody sees needs.</summary>
    public sealed record PersonTile(Guid Id, string FirstName, string Initials)
    {
        public static PersonTile For(Guid id, string name)
        {
            var words = name.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            return new PersonTile(id, words[0], words.Length == 1 ? words[0][..1] : $"{words[0][0]}{words[^1][0]}");
        }
    }

    public sealed record Input
    {
        public Guid Who { get; set; }
        public string Pin { get; set; } = "";
        public Guid? Visit { get; set; }
    }

    /// <param name="Room">Where they land.</param>
    public sealed record Outcome(string Room);
}
