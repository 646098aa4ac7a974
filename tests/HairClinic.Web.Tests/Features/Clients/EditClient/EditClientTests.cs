using HairClinic.Domain.Clients;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Wear;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.Clients;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Clients.EditClient;

namespace HairClinic.Web.Tests.Features.Clients.EditClient;

public sealed class EditClientTests(PgServer server)
{
    private readonly ClientScene _given = new();
    private Client _client = null!;

    [Fact]
    public async Task What_is_edited_is_kept_and_the_phone_is_written_internationally()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LayAda));
        var input = (await OpenAsync(clinic))!.Saved with
        {
            Name = "Ada Fenn",
            Phone = "01632 960011",
            BirthDate = new LocalDate(1980, 5, 1),
            Note = " Sits by the window. ",
        };

        await SaveAsync(clinic, input);

        var saved = (await OpenAsync(clinic))!.Saved;
        Assert.Equal(input with { Phone = "+441632960011", Note = "Sits by the window.", Version = saved.Version }, saved);
    }

    [Fact]
    public async Task The_words_by_which_they_are_found_follow_the_name_the_code_and_the_phone()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LayAda));

        await SaveAsync(clinic, (await OpenAsync(clinic))!.Saved with { Name = "Ada Quist", Code = "C-99", Phone = "01632 960011" });

        var words = await clinic.ReadAsync(db =>
            db.FindWords.Where(w => w.SubjectId == _client.Id).Select(w => w.Word).ToListAsync(TestContext.Current.CancellationToken)
        );
        Assert.Equal(["110069236144", "ada", "c99", "quist"], words.Order());
    }

    [Fact]
    public async Task Of_two_who_edit_at_once_the_second_is_told_and_nothing_of_the_first_is_lost()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LayAda));
        var first = (await OpenAsync(clinic))!.Saved;
        var second = first with { };
        await SaveAsync(clinic, first with { Note = "Allergic to small talk." });

        await Assert.ThrowsAsync<OvertakenException>(() => SaveAsync(clinic, second with { Name = "Ada Fenn" }));

        var kept = (await OpenAsync(clinic))!.Saved;
        Assert.Equal(("Ada Fenwick", "Allergic to small talk."), (kept.Name, kept.Note));
    }

    [Theory]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public async Task Another_home_salon_or_other_preferred_days_ask_for_the_due_dates_to_be_worked_out_anew(bool moves, bool prefers)
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LayAda));
        var input = (await OpenAsync(clinic))!.Saved;

        await SaveAsync(
            clinic,
            input with
            {
                HomeSalonId = moves ? _given.There.Id : input.HomeSalonId,
                PreferredDays = prefers ? WeekdaySet.Of(IsoDayOfWeek.Friday) : input.PreferredDays,
            },
            clinic.Acting(_given.Of(StaffRole.Owner), _given.Here, _given.There)
        );

        var work = await clinic.ReadAsync(db =>
            db.WorkItems.SingleAsync(w => w.Kind == WorkKind.RefreshDueDates, TestContext.Current.CancellationToken)
        );
        Assert.Equal((WorkKind.RefreshDueDates, _client.Id), (work.Kind, WorkItemFactory.ReadBody<RefreshDueDatesBody>(work).ClientId));
    }

    [Fact]
    public async Task A_new_note_asks_for_no_work()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LayAda));

        await SaveAsync(clinic, (await OpenAsync(clinic))!.Saved with { Note = "Likes the window." });

        Assert.False(await clinic.ReadAsync(db => db.WorkItems.AnyAsync(TestContext.Current.CancellationToken)));
    }

    [Theory]
    [InlineData("ring the sister", "“ring the sister” does not look like a phone number")]
    [InlineData("01632 1", "“01632 1” is not a number that can be rung")]
    public async Task A_phone_that_cannot_be_read_is_refused_in_a_sentence(string typed, string beginning)
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LayAda));
        var input = (await OpenAsync(clinic))!.Saved with { Phone = typed };

        var refusal = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, input));

        Assert.StartsWith(beginning, refusal.Message, StringComparison.Ordinal);
        Assert.Equal(nameof(Slice.Input.Phone), refusal.Field);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_code_that_is_taken_is_refused_in_one_sentence_whoever_has_it(bool here)
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                LayAda(g);
                g.Scene.AddClient("C-2", "Bo Larch", here ? g.Here : g.There);
            })
        );

        var input = (await OpenAsync(clinic))!.Saved with { Code = "C-2" };

        var refusal = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, input));
        Assert.Equal(
            ("This code cannot be used. Take the proposed one or another.", nameof(Slice.Input.Code)),
            (refusal.Message, refusal.Field)
        );
    }

    [Fact]
    public async Task A_proposed_code_can_be_taken_instead_of_an_old_one()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LayAda));
        var screen = (await OpenAsync(clinic))!;

        await SaveAsync(clinic, screen.Saved with { Code = screen.Proposed, Proposed = screen.Proposed });

        Assert.True(ClientCodeGenerator.HasGeneratedFormat(screen.Proposed), screen.Proposed);
        Assert.Equal(screen.Proposed, (await OpenAsync(clinic))!.Saved.Code);
    }

    [Theory]
    [InlineData(true, 1)]
    [InlineData(false, 0)]
    public async Task Of_another_client_with_the_number_only_one_whom_the_desk_may_see_is_asked_about(bool here, int asked)
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                LayAda(g);
                g.Scene.AddClient("C-2", "Kester Vale", here ? g.Here : g.There, "+441632960011");
            })
        );
        var input = (await OpenAsync(clinic))!.Saved with { Phone = "01632 960011" };

        var outcome = await SaveAsync(clinic, input);

        Assert.Equal(asked, outcome.SamePhoneNumber.Count(o => o.Name == "Kester Vale"));
        Assert.Equal(here ? "+441632960001" : "+441632960011", (await OpenAsync(clinic))!.Saved.Phone);
        if (here)
            Assert.Empty((await SaveAsync(clinic, input with { SharedPhone = input.Phone })).SamePhoneNumber);
        Assert.Equal("+441632960011", (await OpenAsync(clinic))!.Saved.Phone);
    }

    [Fact]
    public async Task A_number_that_two_share_already_is_not_asked_about_when_something_else_is_saved()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g =>
            {
                LayAda(g);
                g.Scene.AddClient("C-2", "Kester Vale", g.Here, "+441632960001");
            })
        );

        var outcome = await SaveAsync(clinic, (await OpenAsync(clinic))!.Saved with { Note = "Likes the window." });

        Assert.Empty(outcome.SamePhoneNumber);
    }

    [Fact]
    public async Task A_client_of_another_salon_can_neither_be_opened_nor_saved()
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            _given.Laying(g => _client = g.Scene.AddClient("C-9", "Cy Moss", g.There))
        );

        Assert.Null(await OpenAsync(clinic));
        await Refused.SayingAsync(
            "This client is not there any more. They may have been merged with another record.",
            () => SaveAsync(clinic, Slice.Input.From(_client))
        );
    }

    [Fact]
    public async Task Whoever_was_let_in_changes_how_to_reach_them_and_does_not_take_them_over()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LayGuest));
        var there = clinic.Acting(_given.DeskThere, _given.There);
        var screen = (await OpenAsync(clinic, there))!;

        Assert.False(screen.AtHome);
        Assert.Equal([_given.Here.Id], screen.Salons.Select(s => s.Id));
        await Refused.SayingAsync(
            "Choose one of your own salons, and only for a client of theirs. To any other salon a client is transferred, under Who may see.",
            () => SaveAsync(clinic, screen.Saved with { HomeSalonId = _given.There.Id }, there)
        );
        await SaveAsync(clinic, screen.Saved with { Note = "Rings before noon." }, there);

        var kept = (await OpenAsync(clinic))!.Saved;
        Assert.Equal((_given.Here.Id, "Rings before noon."), (kept.HomeSalonId, kept.Note));
    }

    [Fact]
    public async Task A_salon_that_was_not_offered_is_refused_at_its_field_and_by_the_slice()
    {
        await using var clinic = await TestClinic.OpenAsync(server, _given.Laying(LayAda));
        var screen = (await OpenAsync(clinic))!;
        var forged = screen.Saved with { HomeSalonId = _given.There.Id };

        var fault = Assert.Single(new EditClientRules(() => screen.Salons).Validate(forged).Errors);
        Assert.Equal(nameof(forged.HomeSalonId), fault.PropertyName);
        Assert.Equal(fault.ErrorMessage, (await Assert.ThrowsAsync<Refusal>(() => SaveAsync(clinic, forged))).Message);
    }

    private void LayAda(ClientScene g) => _client = g.Scene.AddClient("C-1", "Ada Fenwick", g.Here, "+441632960001");

    private void LayGuest(ClientScene g)
    {
        LayAda(g);
        g.LetIn(_client);
    }

    private Task<Slice.Screen?> OpenAsync(TestClinic clinic, PersonActor? person = null) =>
        clinic.UseAsync<Slice, Slice.Screen?>(
            person ?? clinic.Acting(_given.Desk, _given.Here),
            slice => slice.OpenAsync(_client.Id, TestContext.Current.CancellationToken)
        );

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input, PersonActor? person = null) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            person ?? clinic.Acting(_given.Desk, _given.Here),
            slice => slice.SaveAsync(Guid.CreateVersion7(), input, TestContext.Current.CancellationToken)
        );
}
