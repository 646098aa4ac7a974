using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Features.MyHair;
using HairClinic.Web.Fence;
using Slice = HairClinic.Web.Features.MyHair.MyHair;

namespace HairClinic.Web.Tests.Fence;

/// <summary>First pages are read over a few connections that many share at once and nobody resets: none hands one client another's page.</summary>
public sealed class SharedConnectionTests(PgServer server)
{
    private static readonly string[] Names = [.. Enumerable.Range(0, 24).Select(n => $"Guest {n}")];

    [Fact]
    public async Task A_thousand_at_once_each_read_their_own_page_or_none()
    {
        var clients = new List<Client>();
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("Practice under test");
                var salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 1);
                clients.AddRange(Names.Select((name, n) => scene.AddClient($"C-{n}", name, salon, email: $"c{n}@example.test")));
            }
        );
        await clinic.LayAsync(scene => scene.Db.Clients.Single(c => c.Id == clients[0].Id).Leave(new(2027, 2, 1)));
        var signedIn = new List<ClientActor>();
        foreach (var client in clients)
            signedIn.Add(await clinic.SignInAsync(client.Id));
        var now = clinic.Clock.GetCurrentInstant();
        // Of every five one breaks: a client who left, one of another practice, somebody who is nobody.
        ClientActor[] strangers =
        [
            signedIn[0],
            new(Guid.CreateVersion7(), clients[1].Id, signedIn[1].SignInId),
            new(clinic.PracticeId, Guid.CreateVersion7(), signedIn[2].SignInId),
        ];

        var read = await Task.WhenAll(
            Enumerable
                .Range(0, 1000)
                .Select(async n =>
                {
                    var actor = n % 5 == 0 ? strangers[n % 3] : signedIn[1 + n % 23];
                    var facts = await clinic.UseAsync<OwnPageReader, Slice.Screen?>(
                        actor,
                        book => book.ReadAsync(actor, now, TestContext.Current.CancellationToken)
                    );
                    return (Expected: n % 5 == 0 ? null : Names[1 + n % 23], facts?.Name);
                })
        );

        Assert.All(read, one => Assert.Equal(one.Expected, one.Name));
    }
}
