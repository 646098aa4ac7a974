using HairClinic.Domain.HairSystems;
using HairClinic.Web.Fence;
using NodaTime;
using Placing = HairClinic.Web.Features.Units.PlaceOrder;
using Slice = HairClinic.Web.Features.Units.TakeBackStep;

namespace HairClinic.Web.Tests.Features.Units.TakeBackStep;

public sealed class TakeBackStepTests(PgServer server)
{
    private static readonly LocalDate Today = UnitBook.Today;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task On_the_day_whoever_wrote_it_takes_it_back_and_all_is_as_before_but_the_line_with_the_reason()
    {
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(server, b => b.Order("7", Today.PlusDays(-30), unit = b.Draft("U-1", b.Una)));
        const string rest =
            "select string_agg(r, E'\\n' order by r) from (select to_jsonb(t)::text r from hair_systems t"
            + " union all select to_jsonb(t)::text from unit_arrivals t) rows";
        var before = await book.AskAsync(rest);
        await book.TakeAsync(unit, UnitStepKind.Arrived);

        await book.RefusedAsync("Say what was wrong with it.", () => BackAsync(book, unit, book.AtDesk, " "));
        await book.RefusedAsync(
            "You cannot open this unit: it belongs to another salon. Ask somebody there.",
            () => BackAsync(book, unit, book.AsElsewhere)
        );
        await BackAsync(book, unit, book.AtDesk, "another client’s parcel");

        Assert.Equal(before, await book.AskAsync(rest));
        var step = (await book.UnitAsync(unit)).Steps.Single(s => !s.Stands);
        Assert.Equal(
            (UnitStepKind.Arrived, "another client’s parcel", (Guid?)book.Desk.Id),
            (step.Kind, step.TakenBackBecause, step.TakenBackBy)
        );
    }

    [Fact]
    public async Task A_colleague_and_the_next_day_are_too_late_and_a_manager_is_not()
    {
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(server, b => unit = b.InHouse("U-1", b.Una));
        await book.TakeAsync(unit, UnitStepKind.Prepared);
        const string late = "Only whoever wrote it can change it, and only on the same day. Ask a manager or the owner.";

        await book.RefusedAsync(late, () => BackAsync(book, unit, book.Clinic.Acting(book.Stylist, book.ElmRow)));
        book.Clinic.Clock.AdvanceDays(1);
        await book.RefusedAsync(late, () => BackAsync(book, unit, book.AtDesk));
        await BackAsync(book, unit, book.AsManager);

        Assert.Equal(UnitState.Accepted, (await book.UnitAsync(unit)).State);
    }

    [Fact]
    public async Task What_something_was_built_on_is_not_taken_back_and_the_form_offers_the_last()
    {
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(server, b => unit = b.InHouse("U-1", b.Una));
        await book.TakeAsync(unit, UnitStepKind.Prepared);
        var first = (await book.UnitAsync(unit)).Steps.Single();
        await book.TakeAsync(unit, UnitStepKind.Moved, i => i.Spot = "drawer 3");

        await book.RefusedAsync(
            "Something newer is written of unit {0}. Undo that first.",
            () => BackAsync(book, unit, book.AtDesk, "wrong", first.Id)
        );
        await BackAsync(book, unit, book.AtDesk);
        await BackAsync(book, unit, book.AtDesk);

        var stored = await book.UnitAsync(unit);
        Assert.Equal((UnitState.Accepted, (string?)null, 0), (stored.State, stored.Spot, stored.Steps.Count(s => s.Stands)));
        await book.RefusedAsync("It was undone already.", () => BackAsync(book, unit, book.AtDesk, "wrong", first.Id));
    }

    [Fact]
    public async Task A_loan_that_was_wrong_is_gone_and_one_that_ended_by_mistake_goes_on()
    {
        HairSystem stock = null!;
        await using var book = await UnitBook.OpenAsync(server, b => stock = b.InHouse("N-1", null));
        Task Lend() => book.TakeAsync(stock, UnitStepKind.Lent, i => (i.ClientId, i.DueBackOn) = (book.Una.Id, Today.PlusDays(9)));

        await Lend();
        await BackAsync(book, stock, book.AtDesk);
        Assert.Equal("0", await book.AskAsync("select count(*) from unit_loans"));

        await Lend();
        foreach (var end in new[] { UnitStepKind.BackFromLoan, UnitStepKind.Lost })
        {
            await book.TakeAsync(stock, end, i => i.Note = "wrong");
            Assert.Equal("0", await book.AskAsync("select count(*) from unit_loans where back_on is null"));
            await BackAsync(book, stock, book.AtDesk);
            Assert.Equal("1", await book.AskAsync("select count(*) from unit_loans where back_on is null"));
            Assert.Equal((UnitState.Lent, UnitPlace.Client), ((await book.UnitAsync(stock)).State, (await book.UnitAsync(stock)).Place));
        }
    }

    // The promise stands in the same moment as the order: it is taken back first.
    [Fact]
    public async Task An_order_with_its_promise_is_taken_back_from_the_end_and_its_order_has_a_unit_less()
    {
        HairSystem one = null!,
            other = null!;
        await using var book = await UnitBook.OpenAsync(server, b => (one, other) = (b.Draft("U-1", b.Una), b.Draft("U-2", b.Una)));
        await book.Clinic.UseAsync<Placing, Placing.Outcome>(
            book.AtDesk,
            s =>
                s.SaveAsync(
                    Guid.CreateVersion7(),
                    new Placing.Input
                    {
                        WorkshopId = book.Scene.Workshops[0].Id,
                        Number = "7",
                        SalonId = book.ElmRow.Id,
                        SentOn = Today,
                        Currency = "GBP",
                        PromisedFor = Today.PlusDays(40),
                        Lines = [.. new[] { one, other }.Select(u => new Placing.Line { UnitId = u.Id, Chosen = true })],
                    },
                    Cancel
                )
        );
        var ordered = (await book.UnitAsync(one)).Steps.Single(s => s.Kind == UnitStepKind.Ordered);

        await book.RefusedAsync(
            "Something newer is written of unit {0}. Undo that first.",
            () => BackAsync(book, one, book.AtDesk, "wrong", ordered.Id)
        );
        await BackAsync(book, one, book.AtDesk);
        Assert.Empty((await book.UnitAsync(one)).Promises);
        await BackAsync(book, one, book.AtDesk);

        Assert.Equal((UnitState.Specified, (Guid?)null), ((await book.UnitAsync(one)).State, (await book.UnitAsync(one)).OrderId));
        Assert.Equal("1", await book.AskAsync("select unit_count from workshop_orders"));
    }

    // The step that the form offers, unless another is named.
    private static async Task BackAsync(UnitBook book, HairSystem unit, PersonActor by, string because = "wrong", Guid? stepId = null)
    {
        book.Clinic.Clock.AdvanceMinutes(1);
        var screen = await book.Clinic.UseAsync<Slice, Slice.Screen?>(by, s => s.OpenAsync(unit.Id, Cancel));
        var input = new Slice.Input
        {
            UnitId = unit.Id,
            StepId = stepId ?? screen?.Last?.Id ?? Guid.Empty,
            Because = because,
        };
        await book.Clinic.UseAsync<Slice, Slice.Outcome>(by, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
    }
}
