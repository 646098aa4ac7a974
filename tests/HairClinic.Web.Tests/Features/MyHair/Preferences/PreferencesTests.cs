using HairClinic.Domain.Clients;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Fence;
using HairClinic.Web.Mail;
using HairClinic.Web.Workers;
using Microsoft.Extensions.DependencyInjection;
using Dates = HairClinic.Web.Features.MyHair.DatesFile;
using Slice = HairClinic.Web.Features.MyHair.Preferences;

namespace HairClinic.Web.Tests.Features.MyHair.Preferences;

public sealed class PreferencesTests(PgServer server)
{
    private readonly OwnScene _own = new();

    [Fact]
    public async Task What_was_chosen_is_kept_and_an_unknown_language_is_not()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);

        await SaveAsync(clinic, new(Letters: false, "es-ES"));
        Assert.Equal(new Slice.Input(false, "es-ES"), (await OpenAsync(clinic)).Chosen);

        await SaveAsync(clinic, new(Letters: true, "../../etc"));
        Assert.Equal(new Slice.Input(true, null), (await OpenAsync(clinic)).Chosen);
    }

    [Fact]
    public async Task Who_wants_no_letters_gets_none_but_the_link_they_asked_for()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);
        await SaveAsync(clinic, new(Letters: false, null));
        await clinic.ReadAsync(async db =>
        {
            db.WorkItems.Add(
                WorkItemFactory.SendLetter(new Letter(_own.Address, "News", "Text") { ClientId = _own.Client.Id }, TestClinic.UsualNow)
            );
            return await db.SaveChangesAsync(Cancel);
        });
        await clinic.AsAsync(
            clinic.Job,
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                await services.GetRequiredService<SignInLinkStore>().AnswerRequestAsync(db, _own.Address, Cancel);
                return await db.SaveChangesAsync(Cancel);
            }
        );
        var route = new Kept();

        await clinic.AsAsync(
            clinic.Job,
            services =>
                ActivatorUtilities
                    .CreateInstance<PracticeWorkRunner>(
                        services,
                        ActivatorUtilities.CreateInstance<LetterSender>(services, (IMailSender)route)
                    )
                    .RunAllDueAsync(Cancel)
        );

        Assert.Equal("Your link", Assert.Single(route.Letters).Subject);
    }

    [Fact]
    public async Task A_calendar_follows_by_a_secret_address_until_it_is_stopped()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);

        var first = await clinic.UseAsync<Slice, string>(_own.Acting(clinic), slice => slice.StartCalendarFeedAsync(Cancel));
        Assert.Contains("SUMMARY:Appointment", await FollowAsync(clinic, first), StringComparison.Ordinal);
        Assert.Null(await FollowAsync(clinic, first[..^4] + "AAAA"));
        Assert.Null(await FollowAsync(clinic, "made-up"));

        var second = await clinic.UseAsync<Slice, string>(_own.Acting(clinic), slice => slice.StartCalendarFeedAsync(Cancel));
        Assert.Null(await FollowAsync(clinic, first));
        Assert.NotNull(await FollowAsync(clinic, second));
    }

    [Fact]
    public async Task A_calendar_ends_with_the_address_it_was_made_by_and_nobody_ends_anothers()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                _own.Lay(scene);
                scene.Db.Guardians.Add(
                    new Guardian(Guid.CreateVersion7(), _own.Client.Id, "Cleo", $"cleo-{_own.Address}", new(2027, 2, 3))
                );
            }
        );
        var signIns = await clinic.AsAsync(clinic.Job, s => Task.FromResult(s.GetRequiredService<ClientSessionStore>()));
        var cleo = (await signIns.OpenAsync(clinic.PracticeId, _own.Client.Id, $"cleo-{_own.Address}", invitation: false, Cancel))!.Actor;
        var theirs = await clinic.UseAsync<Slice, string>(cleo, slice => slice.StartCalendarFeedAsync(Cancel));

        var mine = await clinic.UseAsync<Slice, string>(_own.Acting(clinic), slice => slice.StartCalendarFeedAsync(Cancel));

        Assert.NotNull(await FollowAsync(clinic, theirs));
        Assert.NotNull(await FollowAsync(clinic, mine));
        // The day after they stop looking after the client, whose own goes on.
        clinic.Clock.Advance(NodaTime.Duration.FromDays(1));
        Assert.Null(await FollowAsync(clinic, theirs));
        Assert.NotNull(await FollowAsync(clinic, mine));
    }

    [Fact]
    public async Task Signing_out_everywhere_ends_the_calendars_of_that_address()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);
        var feed = await clinic.UseAsync<Slice, string>(_own.Acting(clinic), slice => slice.StartCalendarFeedAsync(Cancel));
        Assert.True((await OpenAsync(clinic)).Follows);

        await clinic.UseAsync<Slice, bool>(
            _own.Acting(clinic),
            async slice =>
            {
                await slice.SignOutAsync(everywhere: true, Cancel);
                return true;
            }
        );

        Assert.Null(await FollowAsync(clinic, feed));
    }

    [Fact]
    public async Task Signing_out_everywhere_ends_every_device_of_that_address()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _own.Lay);
        var signIns = await clinic.AsAsync(clinic.Job, s => Task.FromResult(s.GetRequiredService<ClientSessionStore>()));
        var here = await signIns.OpenAsync(clinic.PracticeId, _own.Client.Id, _own.Address, invitation: false, Cancel);
        var there = await signIns.OpenAsync(clinic.PracticeId, _own.Client.Id, _own.Address, invitation: false, Cancel);

        await clinic.UseAsync<Slice, bool>(
            here!.Actor,
            async slice =>
            {
                await slice.SignOutAsync(everywhere: true, Cancel);
                return true;
            }
        );

        Assert.Null(await signIns.CheckAsync(there!.Actor, Cancel));
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private Task<Slice.Screen> OpenAsync(TestClinic clinic) =>
        clinic.UseAsync<Slice, Slice.Screen>(_own.Acting(clinic), slice => slice.OpenAsync(Cancel));

    private Task<bool> SaveAsync(TestClinic clinic, Slice.Input input) =>
        clinic.UseAsync<Slice, bool>(
            _own.Acting(clinic),
            async slice =>
            {
                await slice.SaveAsync(input, Cancel);
                return true;
            }
        );

    private static Task<string?> FollowAsync(TestClinic clinic, string address) =>
        clinic.UseAsync<Dates, string?>(clinic.Job, dates => dates.OpenFeedAsync(address, Cancel));

    private sealed class Kept : IMailSender
    {
        public List<Letter> Letters { get; } = [];

        public Task SendAsync(Letter letter, LetterDelivery posting, CancellationToken cancellation)
        {
            Letters.Add(letter);
            return Task.CompletedTask;
        }
    }
}
