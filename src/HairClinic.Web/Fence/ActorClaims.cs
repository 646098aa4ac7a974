using System.Security.Claims;

namespace HairClinic.Web.Fence;

/// <summary>The claims a sign-in carries and the actor they make. Nothing else decides who is acting.</summary>
public static class ActorClaims
{
    public const string Practice = "practice";
    public const string Person = "person";
    public const string Salon = "salon";
    public const string AtSalon = "at-salon";
    public const string Client = "client";
    public const string Session = "session";
    public const string SignIn = "sign-in";

    /// <summary>There when the sign-in is at a shared tablet: minutes without a touch after which it locks.</summary>
    public const string LockAfter = "lock-after";

    /// <summary>There when the address that signed in may open more than one client's page.</summary>
    public const string Household = "household";

    /// <summary>There when the address that signed in is not confirmed; what it opens the database decides.</summary>
    public const string DatesOnly = "dates-only";

    /// <summary>What the shell shows of who is signed in; it decides nothing.</summary>
    public const string DisplayName = "display-name";

    public static Actor? ToActor(ClaimsPrincipal? user)
    {
        if (user?.Identity?.IsAuthenticated != true || Read(user, Practice) is not { } practice)
            return null;
        if (Read(user, Person) is { } person && Enum.TryParse<StaffRole>(user.FindFirstValue(ClaimTypes.Role), out var role))
            return new PersonActor(
                practice,
                person,
                role,
                [.. user.FindAll(Salon).Select(c => Guid.Parse(c.Value))],
                Read(user, AtSalon),
                Read(user, Session)
            );
        return Read(user, Client) is { } client ? new ClientActor(practice, client, Read(user, SignIn)) : null;
    }

    public static IEnumerable<Claim> For(PersonActor person) =>
        [
            new(Practice, person.PracticeId.ToString()),
            new(Person, person.PersonId.ToString()),
            new(ClaimTypes.Role, person.Role),
            .. person.Salons.Select(s => new Claim(Salon, s.ToString())),
            .. person.AtSalon is { } at ? [new Claim(AtSalon, at.ToString())] : Array.Empty<Claim>(),
        ];

    public static IEnumerable<Claim> For(ClientActor client) =>
        [
            new(Practice, client.PracticeId.ToString()),
            new(Client, client.ClientId.ToString()),
            .. client.SignInId is { } signIn ? [new Claim(SignIn, signIn.ToString())] : Array.Empty<Claim>(),
        ];

    public static Claim MakeSessionClaim(Guid session) => new(Session, session.ToString());

    public static Claim ForLockAfter(int minutes) => new(LockAfter, minutes.ToString(CultureInfo.InvariantCulture));

    /// <summary>What a sign-in keeps while its person is read afresh.</summary>
    public static IEnumerable<Claim> SessionClaimsOf(ClaimsPrincipal? user) => user?.FindAll(c => c.Type is Session or LockAfter) ?? [];

    public static int? LockAfterOf(ClaimsPrincipal? user) =>
        int.TryParse(user?.FindFirstValue(LockAfter), CultureInfo.InvariantCulture, out var minutes) ? minutes : null;

    public static Guid? SessionOf(ClaimsPrincipal? user) => user is null ? null : Read(user, Session);

    private static Guid? Read(ClaimsPrincipal user, string claim) => Guid.TryParse(user.FindFirstValue(claim), out var id) ? id : null;
}
