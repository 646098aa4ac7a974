using HairClinic.Domain.Clients;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Clients.AskForClient.AskForClient;

namespace HairClinic.Web.Tests.Features.Clients.AskForClient;

public sealed class AskForClientTests(PgServer server)
{
    private readonly ClientScene given = new();
    private Client client = null!;

    [Theory]
    [InlineData("C-1")]
    [InlineData("01632 960001")]
    public async Task The_home_salon_is_asked(string codeOrPhone)
    {
        await using var clinic = await OpenClinicAsync();

        await AskAsync(clinic, codeOrPhone);

        var request = Assert.Single(await RequestsAsync(clinic));
        Assert.Equal((client.Id, given.There.Id, given.DeskThere.Id), (request.ClientId, request.SalonId, request.AskedBy));
    }

    [Theory]
    [InlineData("C-9")]
    [InlineData("01632 960009")]
    [InlineData("Ada")]
    public async Task Nobody_is_found_by_guessing_and_the_answer_is_the_same(string codeOrPhone)
    {
        await using var clinic = await OpenClinicAsync();

        Assert.Equal(await AskAsync(clinic, "C-1"), await AskAsync(clinic, codeOrPhone));

        Assert.Single(await RequestsAsync(clinic));
    }

    [Fact]
    public async Task The_same_tap_twice_asks_once()
    {
        await using var clinic = await OpenClinicAsync();
        var key = Guid.CreateVersion7();

        await AskAsync(clinic, "C-1", key);
        await AskAsync(clinic, "C-1", key);

        Assert.Single(await RequestsAsync(clinic));
    }

    private Task<TestClinic> OpenClinicAsync() =>
        TestClinic.OpenAsync(server, given.Laying(g => client = g.Scene.Welcome("C-1", "Ada Fenwick", g.Here, "+441632960001")));

    private Task<Slice.Outcome> AskAsync(TestClinic clinic, string codeOrPhone, Guid? key = null) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(given.DeskThere, given.There),
            s =>
                s.SaveAsync(
                    key ?? Guid.CreateVersion7(),
                    new() { CodeOrPhone = codeOrPhone, Because = "Stands here" },
                    TestContext.Current.CancellationToken
                )
        );

    private static Task<List<ClientRequest>> RequestsAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => db.ClientRequests.AsNoTracking().ToListAsync(TestContext.Current.CancellationToken));
}
