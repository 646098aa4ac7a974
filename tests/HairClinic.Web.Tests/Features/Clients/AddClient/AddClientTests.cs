using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Web.Demo.Scenes;
using Microsoft.EntityFrameworkCore;
using Slice = HairClinic.Web.Features.Clients.AddClient;

namespace HairClinic.Web.Tests.Features.Clients.AddClient;

public sealed class AddClientTests(PgServer server)
{
    private Person _desk = null!;
    private Salon _salon = null!;

    [Fact]
    public async Task A_new_client_is_found_by_name_code_and_the_end_of_the_phone()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var input = Input("C-7", "Nuria Ávalos-Quist", "+441632960007");

        var outcome = await SaveAsync(clinic, Guid.CreateVersion7(), input);

        var words = await clinic.ReadAsync(db =>
            db.FindWords.Where(w => w.SubjectId == outcome.Added!.ClientId)
                .Select(w => w.Word)
                .ToListAsync(TestContext.Current.CancellationToken)
        );
        Assert.Equal(["700069236144", "avalos", "c7", "nuria", "quist"], words.Order());
    }

    [Fact]
    public async Task The_same_tap_sent_twice_adds_one_client_and_gives_the_same_answer()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var key = Guid.CreateVersion7();

        var answers = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => SaveAsync(clinic, key, Input("C-1", "Ada Fenwick"))));

        Assert.Single(answers.Select(a => a.Added).Distinct());
        Assert.Equal(1, await clinic.ReadAsync(db => db.Clients.CountAsync(TestContext.Current.CancellationToken)));
    }

    [Fact]
    public async Task The_same_key_with_another_body_is_refused_and_changes_nothing()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var key = Guid.CreateVersion7();
        await SaveAsync(clinic, key, Input("C-1", "Ada Fenwick"));

        await Refused.SayingAsync(
            "This form was sent already with other answers. Open it again to change what was saved.",
            () => SaveAsync(clinic, key, Input("C-2", "Ada Fenwick"))
        );

        Assert.Equal(
            ["C-1"],
            await clinic.ReadAsync(db => db.Clients.Select(c => c.Code).ToListAsync(TestContext.Current.CancellationToken))
        );
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_code_that_is_taken_is_refused_in_one_sentence_whoever_has_it(bool inMySalon)
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                Lay(scene);
                var other = scene.OpenSalon("Quay", "Europe/London", "GBP", chairs: 1);
                scene.AddClient("C-1", "Ada Fenwick", inMySalon ? _salon : other);
            }
        );

        var refusal = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, Guid.CreateVersion7(), Input(" C-1 ", "Bo Larch")));

        Assert.Equal(
            ("This code cannot be used. Take the proposed one or another.", nameof(Slice.Input.Code)),
            (refusal.Message, refusal.Field)
        );
    }

    [Fact]
    public async Task A_code_is_proposed_that_nobody_can_guess_and_each_time_another()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var proposed = new List<string>();
        for (var i = 0; i < 20; i++)
            proposed.Add((await OpenAsync(clinic)).Proposed);

        Assert.All(proposed, code => Assert.True(ClientCodeGenerator.HasGeneratedFormat(code), code));
        Assert.Equal(20, proposed.Distinct().Count());
    }

    [Fact]
    public async Task A_proposed_code_that_somebody_has_by_now_is_drawn_anew_and_never_refused()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                Lay(scene);
                scene.AddClient("KX7-W4M", "Ada Fenwick", scene.OpenSalon("Quay", "Europe/London", "GBP", chairs: 1));
            }
        );

        var outcome = await SaveAsync(clinic, Guid.CreateVersion7(), Input("KX7-W4M", "Bo Larch") with { Proposed = "KX7-W4M" });

        Assert.True(ClientCodeGenerator.HasGeneratedFormat(outcome.Added!.Code), outcome.Added.Code);
        Assert.NotEqual("KX7-W4M", outcome.Added.Code);
    }

    [Theory]
    [InlineData("America/New_York", "518 555 0146", "+15185550146")]
    [InlineData("America/New_York", "5185550146", "+15185550146")]
    [InlineData("America/New_York", "(518) 555-0146", "+15185550146")]
    [InlineData("America/New_York", "+44 1632 960007", "+441632960007")]
    [InlineData("Europe/London", "01632 960007", "+441632960007")]
    // A zone that lies in no country leaves it to the practice's, which is British here.
    [InlineData("Etc/UTC", "01632 960007", "+441632960007")]
    public async Task A_number_is_read_as_it_is_written_where_the_salon_is(string zone, string typed, string written)
    {
        await using var clinic = await TestClinic.OpenAsync(server, scene => Lay(scene, zone));

        await SaveAsync(clinic, Guid.CreateVersion7(), Input("C-1", "Ada Fenwick", typed));

        Assert.Equal(
            written,
            await clinic.ReadAsync(db => db.Clients.Select(c => c.Phone).SingleAsync(TestContext.Current.CancellationToken))
        );
    }

    [Theory]
    [InlineData("America/New_York", "01632 960007", "(201) 555-0123")]
    [InlineData("Europe/London", "518 555 0146", "0121 234 5678")]
    public async Task A_number_that_cannot_be_rung_is_told_at_its_field_with_one_of_the_salons_country(
        string zone,
        string typed,
        string example
    )
    {
        await using var clinic = await TestClinic.OpenAsync(server, scene => Lay(scene, zone));

        var refusal = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, Guid.CreateVersion7(), Input("C-1", "Ada Fenwick", typed)));

        Assert.Equal(nameof(Slice.Input.Phone), refusal.Field);
        Assert.Contains(example, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_second_client_with_the_same_number_is_asked_about_and_saved_at_the_second_tap()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                Lay(scene);
                scene.AddClient("C-1", "Kester Vale", _salon, "+441632960007");
            }
        );
        var input = Input("C-2", "Bo Larch", "01632 960007");

        var asked = await SaveAsync(clinic, Guid.CreateVersion7(), input);

        Assert.Null(asked.Added);
        Assert.Equal("Kester Vale", Assert.Single(asked.SamePhoneNumber).Name);
        Assert.Equal(1, await clinic.ReadAsync(db => db.Clients.CountAsync(TestContext.Current.CancellationToken)));

        var added = await SaveAsync(clinic, Guid.CreateVersion7(), input with { SharedPhone = input.Phone });

        Assert.Equal("Bo Larch", added.Added!.Name);
    }

    [Fact]
    public async Task What_was_agreed_for_one_number_is_asked_anew_for_another()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                Lay(scene);
                scene.AddClient("C-1", "Kester Vale", _salon, "+441632960007");
            }
        );

        var asked = await SaveAsync(
            clinic,
            Guid.CreateVersion7(),
            Input("C-2", "Bo Larch", "01632 960007") with
            {
                SharedPhone = "01632 960008",
            }
        );

        Assert.Single(asked.SamePhoneNumber);
    }

    [Fact]
    public async Task Nothing_is_said_of_a_client_of_another_salon_with_the_same_number()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                Lay(scene);
                scene.AddClient("C-1", "Kester Vale", scene.OpenSalon("Quay", "Europe/London", "GBP", chairs: 1), "+441632960007");
            }
        );

        var outcome = await SaveAsync(clinic, Guid.CreateVersion7(), Input("C-2", "Bo Larch", "01632 960007"));

        Assert.NotNull(outcome.Added);
        Assert.Empty(outcome.SamePhoneNumber);
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

    private void Lay(Scene scene) => Lay(scene, "Europe/London");

    private void Lay(Scene scene, string zone)
    {
        scene.AddPractice("Practice under test");
        _salon = scene.OpenSalon("Elm Row", zone, "GBP", chairs: 2);
        _desk = scene.Hire("Desk", StaffRole.FrontDesk, _salon);
    }

    private Slice.Input Input(string code, string name, string? phone = null) =>
        new()
        {
            Code = code,
            Name = name,
            Phone = phone,
            HomeSalonId = _salon.Id,
        };

    private Task<Slice.Screen> OpenAsync(TestClinic clinic) =>
        clinic.UseAsync<Slice, Slice.Screen>(clinic.Acting(_desk, _salon), slice => slice.OpenAsync(TestContext.Current.CancellationToken));

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Guid key, Slice.Input input) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(_desk, _salon),
            slice => slice.SaveAsync(key, input, TestContext.Current.CancellationToken)
        );
}
