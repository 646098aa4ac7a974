using System.Text.RegularExpressions;
using HairClinic.Domain.Clients;
using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Slice = HairClinic.Web.Features.MyHair.OpenLink;

namespace HairClinic.Web.Tests.Features.MyHair.OpenLink;

public sealed class OpenLinkTests(PgServer server)
{
    private Client _client = null!;

    [Fact]
    public async Task A_link_opened_ten_times_at_once_lets_one_in_as_that_client()
    {
        await using var clinic = await OpenAsync();
        var token = await PostAsync(clinic);

        var tries = await Task.WhenAll(Enumerable.Range(0, 10).Select(_ => UseAsync(clinic, token)));

        var actor = Assert.Single(tries, t => t is not null);
        var own = Assert.IsType<ClientActor>(actor);
        Assert.Equal((clinic.PracticeId, _client.Id), (own.PracticeId, own.ClientId));
        Assert.NotNull(own.SignInId);
    }

    [Fact]
    public async Task A_link_older_than_15_minutes_opens_nothing()
    {
        await using var clinic = await OpenAsync();
        var token = await PostAsync(clinic);

        clinic.Clock.Advance(Duration.FromMinutes(15));

        Assert.Null(await UseAsync(clinic, token));
    }

    [Fact]
    public async Task A_made_up_link_opens_nothing()
    {
        await using var clinic = await OpenAsync();

        Assert.Null(await UseAsync(clinic, "made-up"));
    }

    private Task<TestClinic> OpenAsync() =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("Practice under test");
                _client = scene.AddClient(
                    "C-1",
                    "Ada Fenwick",
                    scene.OpenSalon("Elm Row", "Europe/London", "GBP", 1),
                    email: "ada@example.test"
                );
            }
        );

    private Task<string> PostAsync(TestClinic clinic) =>
        clinic.AsAsync(
            clinic.Job,
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                var kept = await db.Clients.SingleAsync(c => c.Id == _client.Id, TestContext.Current.CancellationToken);
                services.GetRequiredService<SignInLinkStore>().AddLinkAndLetter(db, kept.Id, kept.Email!);
                await db.SaveChangesAsync(TestContext.Current.CancellationToken);
                var body = await db.WorkItems.Select(w => w.Body).SingleAsync(TestContext.Current.CancellationToken);
                return Regex.Match(body, @"token=([\w-]+)").Groups[1].Value;
            }
        );

    private static Task<Actor?> UseAsync(TestClinic clinic, string token) =>
        clinic.UseAsync<Slice, Actor?>(
            clinic.Job,
            async slice => (await slice.SaveAsync(token, TestContext.Current.CancellationToken))?.SignIn.Actor
        );
}
