using HairClinic.Domain.Practices;
using HairClinic.Web.Demo.Scenes;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Clients.AddClient.AddClient;

namespace HairClinic.Web.Tests.Features.Clients.AddClient;

public sealed class AddClientTests(PgServer server)
{
    private Person desk = null!;
    private Salon salon = null!;

    [Fact]
    public async Task A_new_client_is_found_by_name_code_and_the_end_of_the_phone()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var input = Input("C-7", "Nuria Ávalos-Quist", "+441632960007");

        var outcome = await SaveAsync(clinic, Guid.CreateVersion7(), input);

        var words = await clinic.ReadAsync(db =>
            db.FindWords.Where(w => w.SubjectId == outcome.ClientId).Select(w => w.Word).ToListAsync(TestContext.Current.CancellationToken)
        );
        Assert.Equal(["700069236144", "avalos", "c7", "nuria", "quist"], words.Order());
    }

    [Fact]
    public async Task The_same_tap_sent_twice_adds_one_client_and_gives_the_same_answer()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var key = Guid.CreateVersion7();

        var answers = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => SaveAsync(clinic, key, Input("C-1", "Ada Fenwick"))));

        Assert.Single(answers.Distinct());
        Assert.Equal(1, await clinic.ReadAsync(db => db.Clients.CountAsync(TestContext.Current.CancellationToken)));
    }

    [Fact]
    public async Task The_same_key_with_another_body_is_refused_and_changes_nothing()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var key = Guid.CreateVersion7();
        await SaveAsync(clinic, key, Input("C-1", "Ada Fenwick"));

        await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, key, Input("C-2", "Ada Fenwick")));

        Assert.Equal(
            ["C-1"],
            await clinic.ReadAsync(db => db.Clients.Select(c => c.Code).ToListAsync(TestContext.Current.CancellationToken))
        );
    }

    [Fact]
    public async Task A_code_that_is_taken_is_refused_in_a_sentence()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        await SaveAsync(clinic, Guid.CreateVersion7(), Input("C-1", "Ada Fenwick"));

        var refusal = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, Guid.CreateVersion7(), Input("C-1", "Bo Larch")));

        Assert.Equal("The code C-1 belongs to another client already.", refusal.Message);
    }

    [Fact]
    public async Task Saving_takes_one_round_trip()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        await SaveAsync(clinic, Guid.CreateVersion7(), Input("C-1", "Ada Fenwick"));

        Assert.Single(clinic.Commands.All);
    }

    [Fact]
    public async Task A_client_of_another_practice_is_not_there()
    {
        await using var theirs = await TestClinic.OpenAsync(server, Lay);
        await SaveAsync(theirs, Guid.CreateVersion7(), Input("C-1", "Ada Fenwick"));
        await using var ours = await TestClinic.OpenAsync(server, Lay);

        var seen = await ours.ReadAsync(db => db.Clients.IgnoreQueryFilters().CountAsync(TestContext.Current.CancellationToken));

        Assert.Equal(0, seen);
    }

    private void Lay(Scene scene)
    {
        scene.LayPractice("Practice under test");
        salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 2);
        desk = scene.Hire("Desk", StaffRole.FrontDesk, salon);
    }

    private Slice.Input Input(string code, string name, string? phone = null) =>
        new()
        {
            Code = code,
            Name = name,
            Phone = phone,
            HomeSalonId = salon.Id,
        };

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Guid key, Slice.Input input) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(desk, salon),
            slice => slice.SaveAsync(key, input, TestContext.Current.CancellationToken)
        );
}
