using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using Microsoft.AspNetCore.WebUtilities;

namespace HairClinic.Web.Accounts.Tablets;

/// <summary>Knows a shared tablet by the cookie it carries.</summary>
/// <remarks>
/// The tables are fenced; the cookie names the practice in which its token is looked for, so nothing needs to be read before a practice
/// is known. A made-up practice or token finds nothing.
/// </remarks>
public sealed class TabletStore(PracticeJobRunner jobs, IHttpContextAccessor accessor, IConfiguration configuration, IClock clock)
{
    private const string Cookie = "tablet";
    private const int TokenBytes = 32;

    // As long as browsers keep one.
    private static readonly TimeSpan Kept = TimeSpan.FromDays(400);

    private readonly HostPrefixCookies _cookies = new(configuration.GetValue<bool>("SignIn:BehindTls"));

    /// <summary>The page for switching person; it needs no sign-in.</summary>
    public const string SwitchPage = "/switch-person";

    private HttpContext Http => accessor.HttpContext ?? throw new InvalidOperationException("Only a request comes from a tablet.");

    /// <summary>Whether the browser says it is one: nothing is looked up.</summary>
    public bool IsCarried => Read() is not null;

    /// <summary>The sign-in page: at a tablet the switch screen, which is given only the visit that was open.</summary>
    /// <param name="path">Where somebody was.</param>
    public static string SwitchPath(string? path) => VisitIdFromPath(path) is { } visit ? $"{SwitchPage}?visit={visit}" : SwitchPage;

    public static Guid? VisitIdFromPath(string? path) =>
        path?.Split('/', '?') is ["", "visits", var id, ..] && Guid.TryParseExact(id, "D", out var visit) ? visit : null;

    /// <returns>Null where this browser is none, or its tablet was ended.</returns>
    public async Task<Tablet?> FindCurrentAsync(CancellationToken cancellation)
    {
        if (Read() is not { } carried)
            return null;
        var hash = SHA256.HashData(carried.Token);
        return await RunInPracticeAsync(
            carried.Practice,
            db => db.Tablets.AsNoTracking().SingleOrDefaultAsync(t => t.TokenHash == hash && t.EndedAt == null, cancellation)
        );
    }

    /// <summary>Makes this browser one.</summary>
    /// <returns>What is kept of its token.</returns>
    public byte[] RegisterBrowser(Guid practiceId)
    {
        var token = RandomNumberGenerator.GetBytes(TokenBytes);
        _cookies.AppendResponseCookie(Http, Cookie, $"{practiceId:N}.{WebEncoders.Base64UrlEncode(token)}", Options(Kept));
        return SHA256.HashData(token);
    }

    public void DeleteCookie() => _cookies.DeleteCookie(Http, Cookie, Options(TimeSpan.Zero));

    /// <summary>Somebody came in there. After a full sign-in their PIN counts again, however often it was mistyped.</summary>
    public Task RecordSignInAsync(Tablet tablet, AppUser user, SignInWay way, CancellationToken cancellation) =>
        RunInPracticeAsync(
            tablet.PracticeId,
            async db =>
            {
                var now = clock.GetCurrentInstant();
                await db
                    .Tablets.Where(t => t.Id == tablet.Id)
                    .ExecuteUpdateAsync(set => set.SetProperty(t => t.LastUsedAt, now), cancellation);
                if (way == SignInWay.Pin)
                    return 0;
                return await db
                    .TabletPins.Where(p => p.TabletId == tablet.Id && p.PersonId == user.PersonId)
                    .ExecuteUpdateAsync(set => set.SetProperty(p => p.WrongTries, 0), cancellation);
            }
        );

    internal Task<T> RunInPracticeAsync<T>(Guid practiceId, Func<ClinicDb, Task<T>> work) =>
        jobs.RunJobAsync(
            practiceId,
            "tablet",
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                return await work(db);
            }
        );

    private (Guid Practice, byte[] Token)? Read()
    {
        var parts = accessor.HttpContext is { } http ? _cookies.GetRequestCookie(http, Cookie)?.Split('.') : null;
        if (parts is not [var practice, var token] || !Guid.TryParseExact(practice, "N", out var id) || token.Length > 2 * TokenBytes)
            return null;
        try
        {
            return (id, WebEncoders.Base64UrlDecode(token));
        }
        catch (FormatException)
        {
            return null;
        }
    }

    private CookieOptions Options(TimeSpan age) =>
        new()
        {
            HttpOnly = true,
            IsEssential = true,
            MaxAge = age,
            Path = "/",
            SameSite = SameSiteMode.Lax,
            Secure = Http.Request.IsHttps || configuration.GetValue<bool>("SignIn:BehindTls"),
        };
}
