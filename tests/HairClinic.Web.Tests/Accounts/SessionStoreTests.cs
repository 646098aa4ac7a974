using HairClinic.Domain.Practices;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Tests.Features.Settings;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Tests.Accounts;

public sealed class SessionStoreTests(PgServer server) : PracticeTest(server)
{
    [Fact]
    public async Task A_sign_in_lasts_while_it_is_used_and_twelve_hours_at_most()
    {
        await using var clinic = await OpenAsync();
        var user = await UserAsync(clinic);
        var id = await BookAsync(clinic, b => b.BeginAsync(user, SignInWay.Password, null, Cancel));
        for (var used = 0; used < 13; used++)
        {
            clinic.Clock.Advance(Duration.FromMinutes(55));
            Assert.True(await BookAsync(clinic, b => b.CheckAndTouchAsync(id, user.Id, Cancel)));
        }

        // 11 h 55 min have passed; the limit comes while it is in use.
        clinic.Clock.Advance(Duration.FromMinutes(6));

        Assert.False(await BookAsync(clinic, b => b.CheckAndTouchAsync(id, user.Id, Cancel)));
    }

    [Fact]
    public async Task An_hour_without_use_ends_it()
    {
        await using var clinic = await OpenAsync();
        var user = await UserAsync(clinic);
        var id = await BookAsync(clinic, b => b.BeginAsync(user, SignInWay.Password, null, Cancel));

        clinic.Clock.Advance(SignInSession.Idle);

        Assert.False(await BookAsync(clinic, b => b.CheckAndTouchAsync(id, user.Id, Cancel)));
    }

    [Fact]
    public async Task An_open_screen_that_nobody_touches_is_not_use()
    {
        await using var clinic = await OpenAsync();
        var user = await UserAsync(clinic);
        var id = await BookAsync(clinic, b => b.BeginAsync(user, SignInWay.Password, null, Cancel));
        var touched = clinic.Clock.GetCurrentInstant();
        for (var minute = 0; minute < 59; minute++)
        {
            clinic.Clock.Advance(Duration.FromMinutes(1));
            Assert.True(await BookAsync(clinic, b => b.TouchIfActiveAsync(id, user.Id, touched, Cancel)));
        }
        clinic.Clock.Advance(Duration.FromMinutes(1));

        Assert.False(await BookAsync(clinic, b => b.TouchIfActiveAsync(id, user.Id, touched, Cancel)));
    }

    [Fact]
    public async Task The_oldest_of_more_than_five_ends_and_nobody_elses()
    {
        await using var clinic = await OpenAsync();
        var (user, other) = (await UserAsync(clinic), await UserAsync(clinic, Manager));
        var theirs = await BookAsync(clinic, b => b.BeginAsync(other, SignInWay.Password, null, Cancel));
        var ids = new List<Guid>();
        for (var i = 0; i <= SessionStore.Most; i++)
        {
            clinic.Clock.Advance(Duration.FromMinutes(1));
            ids.Add(await BookAsync(clinic, b => b.BeginAsync(user, SignInWay.Password, null, Cancel)));
        }

        var open = await clinic.ReadAsync(db => db.SignInSessions.Where(s => s.EndedAt == null).Select(s => s.Id).ToListAsync(Cancel));
        Assert.Equal(ids.Skip(1).Append(theirs).Order(), open.Where(id => ids.Contains(id) || id == theirs).Order());
    }

    [Fact]
    public async Task A_sign_in_is_its_persons_only()
    {
        await using var clinic = await OpenAsync();
        var (user, other) = (await UserAsync(clinic), await UserAsync(clinic, Manager));
        var id = await BookAsync(clinic, b => b.BeginAsync(user, SignInWay.Password, null, Cancel));

        Assert.False(await BookAsync(clinic, b => b.EndAsync(other.Id, id, SessionEnd.EndedByPerson, Cancel)));
        Assert.False(await BookAsync(clinic, b => b.TouchIfActiveAsync(id, other.Id, clinic.Clock.GetCurrentInstant(), Cancel)));
        Assert.True(await BookAsync(clinic, b => b.CheckAndTouchAsync(id, user.Id, Cancel)));
    }

    [Fact]
    public async Task A_request_looks_into_the_book_once_a_minute_and_an_end_counts_at_once()
    {
        await using var clinic = await OpenAsync();
        var user = await UserAsync(clinic);
        var id = await BookAsync(clinic, b => b.BeginAsync(user, SignInWay.Password, null, Cancel));
        Assert.True(await BookAsync(clinic, b => b.CheckAndTouchAsync(id, user.Id, Cancel)));
        clinic.Commands.Clear();

        Assert.True(await BookAsync(clinic, b => b.CheckAndTouchAsync(id, user.Id, Cancel)));
        Assert.Empty(clinic.Commands.All);

        await BookAsync(clinic, b => b.EndAsync(user.Id, id, SessionEnd.EndedByPerson, Cancel));
        Assert.False(await BookAsync(clinic, b => b.CheckAndTouchAsync(id, user.Id, Cancel)));
    }

    [Theory]
    [InlineData("Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/140.0.0.0 Safari/537.36", "Chrome on Linux")]
    [InlineData("Mozilla/5.0 (Windows NT 10.0; Win64; x64; rv:140.0) Gecko/20100101 Firefox/140.0", "Firefox on Windows")]
    [InlineData(
        "Mozilla/5.0 (iPad; CPU OS 18_0 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.0 Safari/604.1",
        "Safari on iPad"
    )]
    [InlineData("curl/8", "Unknown device")]
    [InlineData(null, "Unknown device")]
    public void A_device_is_told_in_a_few_words(string? agent, string words) => Assert.Equal(words, DeviceDescription.Describe(agent));

    private static Task<T> BookAsync<T>(TestClinic clinic, Func<SessionStore, Task<T>> ask) => clinic.UseAsync(clinic.Job, ask);

    private Task<AppUser> UserAsync(TestClinic clinic, Person? person = null) =>
        clinic.ReadAsync(async db =>
        {
            var user = new AppUser
            {
                Id = Guid.CreateVersion7(),
                PracticeId = clinic.PracticeId,
                PersonId = (person ?? Owner).Id,
                UserName = $"x{Guid.NewGuid():N}",
                SecurityStamp = "x",
            };
            db.Users.Add(user);
            await db.SaveChangesAsync(Cancel);
            return user;
        });
}
