using HairClinic.Domain.Clients;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Workers;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Clients.RequestClientAccess;

namespace HairClinic.Web.Tests.Features.Clients.RequestClientAccess;

public sealed class RequestClientAccessTests(PgServer server)
{
    private readonly ClientScene _given = new();
    private Client _client = null!;

    [Theory]
    [InlineData("C-1")]
    [InlineData("c1")]
    [InlineData("01632 960001")]
    [InlineData("+44 1632 960001")]
    public async Task The_home_salon_is_asked(string codeOrPhone)
    {
        await using var clinic = await OpenClinicAsync();

        await AskAsync(clinic, codeOrPhone);

        var request = Assert.Single(await RequestsAsync(clinic));
        Assert.Equal((_client.Id, _given.There.Id, _given.DeskThere.Id), (request.ClientId, request.SalonId, request.AskedBy));
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
    public async Task Whoever_asks_can_tell_nothing_by_what_is_done_while_they_wait_either()
    {
        await using var clinic = await OpenClinicAsync();

        await AskAsync(clinic, "C-1");
        var known = clinic.Commands.All.ToList();
        clinic.Commands.Clear();
        await AskAsync(clinic, "C-9");

        Assert.Equal(known.Select(Statement), clinic.Commands.All.Select(Statement));
        Assert.DoesNotContain(known, sql => sql.Contains("clients", StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_was_typed_is_kept_no_longer_than_it_takes_to_look()
    {
        await using var clinic = await OpenClinicAsync();
        await AskAsync(clinic, "01632 960001");

        await RequestsAsync(clinic);

        Assert.Equal(
            "{}",
            await clinic.ReadAsync(db => db.WorkItems.Select(w => w.Body).SingleAsync(TestContext.Current.CancellationToken))
        );
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
        TestClinic.OpenAsync(server, _given.Laying(g => _client = g.Scene.AddClient("C-1", "Ada Fenwick", g.Here, "+441632960001")));

    private Task<Slice.Outcome> AskAsync(TestClinic clinic, string codeOrPhone, Guid? key = null) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(_given.DeskThere, _given.There),
            s =>
                s.SaveAsync(
                    key ?? Guid.CreateVersion7(),
                    new() { CodeOrPhone = codeOrPhone, Because = "Stands here" },
                    TestContext.Current.CancellationToken
                )
        );

    // Behind the screens what was asked is looked for first.
    private static async Task<List<ClientRequest>> RequestsAsync(TestClinic clinic)
    {
        await clinic.UseAsync<PracticeWorkRunner, int>(clinic.Job, work => work.RunAllDueAsync(TestContext.Current.CancellationToken));
        return await clinic.ReadAsync(db => db.ClientRequests.AsNoTracking().ToListAsync(TestContext.Current.CancellationToken));
    }

    // Without how long it took.
    private static string Statement(string command) => command[command.IndexOf('[', StringComparison.Ordinal)..];
}
