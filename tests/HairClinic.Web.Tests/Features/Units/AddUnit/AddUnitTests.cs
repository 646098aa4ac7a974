using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Web.Features.Units;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Units.AddUnit;

namespace HairClinic.Web.Tests.Features.Units.AddUnit;

public sealed class AddUnitTests(PgServer server)
{
    private static readonly LocalDate Today = UnitBook.Today;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_unit_to_be_ordered_is_a_draft_and_nowhere_yet()
    {
        await using var book = await UnitBook.OpenAsync(server);
        var screen = (await OpenAsync(book, book.Una))!;

        var key = Guid.CreateVersion7();
        var input = screen.Start with { Origin = UnitOrigin.ToBeOrdered, UnitKindId = book.Kind.Id, SalonId = null };
        var made = await SaveAsync(book, input, key: key);
        await SaveAsync(book, input, key: key);

        Assert.True(made.ToBeOrdered);
        var unit = await book.UnitAsync(made.UnitId);
        Assert.Equal(
            (UnitState.Specified, null, book.Una.Id, Today),
            (unit.State, unit.Place, unit.ClientId!.Value, unit.Dates.SpecifiedOn!.Value)
        );
        Assert.Equal("1", await book.AskAsync("select count(*) from hair_systems"));
    }

    [Fact]
    public async Task A_ready_made_one_is_in_the_salon_at_once_and_one_from_an_old_book_was_worn()
    {
        await using var book = await UnitBook.OpenAsync(server);

        var made = await SaveAsync(book, Here(book, "N-1") with { PriceMinor = 40_000, Currency = "GBP" });
        var worn = await SaveAsync(book, Here(book, "N-2") with { Origin = UnitOrigin.OldBook });

        var unit = await book.UnitAsync(made.UnitId);
        Assert.Equal((UnitState.Accepted, UnitPlace.Salon, book.ElmRow.Id), (unit.State, unit.Place!.Value, unit.PlaceSalonId!.Value));
        Assert.Equal((Today.PlusDays(-3), 40_000L, true), (unit.Dates.ArrivedOn!.Value, unit.PriceMinor!.Value, unit.IsReady));
        var old = await book.UnitAsync(worn.UnitId);
        Assert.Equal((UnitState.Resting, Today.PlusDays(-3)), (old.State, old.Dates.FirstBondedOn!.Value));
    }

    [Fact]
    public async Task A_serial_that_is_taken_is_refused_at_its_field()
    {
        await using var book = await UnitBook.OpenAsync(server);
        await SaveAsync(book, Here(book, "N-1"));

        var refusal = await Assert.ThrowsAsync<Refusal>(() => SaveAsync(book, Here(book, " N-1 ")));

        Assert.Equal(
            ("There is a unit {0} already. Give this one another serial.", nameof(Slice.Input.Serial)),
            (refusal.Sentence, refusal.Field)
        );
    }

    [Fact]
    public async Task Another_salons_client_is_not_found_and_into_another_salon_nothing_is_put()
    {
        await using var book = await UnitBook.OpenAsync(server);

        Assert.Null(await OpenAsync(book, book.Far));
        await book.RefusedAsync(
            "This client is not there any more. They may have been merged with another record.",
            () => SaveAsync(book, Here(book, "N-1") with { ClientId = book.Far.Id })
        );
        await book.RefusedAsync("Say in which salon it is.", () => SaveAsync(book, Here(book, "N-1") with { SalonId = book.Quayside.Id }));
    }

    [Fact]
    public async Task What_has_not_come_yet_is_refused_and_so_is_an_unknown_kind()
    {
        await using var book = await UnitBook.OpenAsync(server);

        await book.RefusedAsync(
            "{0} is in the future: choose today or earlier.",
            () => SaveAsync(book, Here(book, "N-1") with { HereSince = Today.PlusDays(1) })
        );
        await book.RefusedAsync(
            "Choose the kind of unit.",
            () => SaveAsync(book, Here(book, "N-1") with { UnitKindId = Guid.CreateVersion7() })
        );
    }

    [Fact]
    public async Task Stock_is_nobodys_and_each_serial_that_is_proposed_is_free()
    {
        await using var book = await UnitBook.OpenAsync(server);
        for (var i = 0; i < 2; i++)
        {
            var screen = (await OpenAsync(book, null))!;
            Assert.Equal((null, UnitOrigin.ReadyMade), (screen.Client, screen.Start.Origin!.Value));
            await SaveAsync(book, screen.Start with { UnitKindId = book.Kind.Id, HereSince = Today });
        }

        Assert.Equal("2", await book.AskAsync("select count(distinct serial) from hair_systems where client_id is null"));
    }

    [Fact]
    public async Task A_trainee_adds_none()
    {
        await using var book = await UnitBook.OpenAsync(server, b => b.GiveToTrainee(b.Una));

        await book.RefusedAsync(
            "This is not yours to change. Ask somebody of the client's own salon, or a manager.",
            () => SaveAsync(book, Here(book, "N-1"), book.AsTrainee)
        );
    }

    [Fact]
    public void The_rules_ask_since_when_and_where_of_what_is_here_alone()
    {
        var draft = new Slice.Input
        {
            Origin = UnitOrigin.ToBeOrdered,
            UnitKindId = Guid.NewGuid(),
            Serial = "N-1",
        };

        Assert.True(new AddUnitRules().Validate(draft).IsValid);
        Assert.Equal(
            ["Say since when it is here.", "Say in which salon it is."],
            new AddUnitRules().Validate(draft with { Origin = UnitOrigin.ReadyMade }).Errors.Select(e => e.ErrorMessage)
        );
    }

    private static Slice.Input Here(UnitBook book, string serial) =>
        new()
        {
            ClientId = book.Una.Id,
            Origin = UnitOrigin.ReadyMade,
            UnitKindId = book.Kind.Id,
            Serial = serial,
            HereSince = Today.PlusDays(-3),
            SalonId = book.ElmRow.Id,
        };

    private static Task<Slice.Screen?> OpenAsync(UnitBook book, Client? client) =>
        book.Clinic.UseAsync<Slice, Slice.Screen?>(book.AtDesk, s => s.OpenAsync(client?.Id, Cancel));

    private static Task<Slice.Outcome> SaveAsync(UnitBook book, Slice.Input input, PersonActor? by = null, Guid? key = null) =>
        book.Clinic.UseAsync<Slice, Slice.Outcome>(by ?? book.AtDesk, s => s.SaveAsync(key ?? Guid.CreateVersion7(), input, Cancel));
}
