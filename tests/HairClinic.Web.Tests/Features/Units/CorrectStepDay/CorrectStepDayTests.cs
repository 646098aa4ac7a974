using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Orders;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.Units;
using HairClinic.Web.Fence;
using NodaTime;
using Slice = HairClinic.Web.Features.Units.CorrectStepDay;

namespace HairClinic.Web.Tests.Features.Units.CorrectStepDay;

public sealed class CorrectStepDayTests(PgServer server)
{
    private static readonly LocalDate Today = UnitBook.Today;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_day_of_an_arrival_is_corrected_under_its_acceptance_and_what_was_written_stays()
    {
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(server, b => unit = b.Arrived("U-1", b.Una, daysAgo: 3));
        await book.TakeAsync(
            unit,
            UnitStepKind.Inspected,
            i =>
            {
                (i.KindAsOrdered, i.BaseAsOrdered, i.PriceAsOrdered) = (true, true, true);
                i.Decision = ArrivalDecision.Accepted;
            }
        );
        var arrived = (await book.UnitAsync(unit)).Steps.Single(s => s.Kind == UnitStepKind.Arrived);

        await book.RefusedAsync("Say what was wrong with it.", () => CorrectAsync(book, unit, arrived, Today.PlusDays(-5), because: " "));
        await book.RefusedAsync(
            "It came after “{0}” on {1}: choose that day or later.",
            () => CorrectAsync(book, unit, arrived, Today.PlusDays(-61))
        );
        await book.RefusedAsync(
            "You cannot open this unit: it belongs to another salon. Ask somebody there.",
            () => CorrectAsync(book, unit, arrived, Today.PlusDays(-5), book.AsElsewhere)
        );
        await CorrectAsync(book, unit, arrived, Today.PlusDays(-5));

        var stored = await book.UnitAsync(unit);
        Assert.Equal(
            (UnitState.Accepted, (LocalDate?)Today.PlusDays(-5), Today.PlusDays(-5), (LocalDate?)Today.PlusDays(2)),
            (stored.State, stored.Dates.ArrivedOn, stored.CurrentArrival!.ArrivedOn, stored.CurrentArrival.ClaimUntil)
        );
        var screen = await book.Clinic.UseAsync<HairClinic.Web.Features.Units.UnitCard, HairClinic.Web.Features.Units.UnitCard.Screen?>(
            book.AtDesk,
            s => s.OpenAsync(unit.Id, Cancel)
        );
        var correction = screen!.Last!;
        Assert.Equal(
            (UnitStepKind.Arrived, Today.PlusDays(-3), "typed wrong", "Desk"),
            (screen.Corrected(correction)!.Kind, screen.Corrected(correction)!.On, correction.Step.Note, correction.By)
        );
    }

    [Fact]
    public async Task A_colleague_and_the_next_day_are_too_late_and_a_manager_is_not()
    {
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(server, b => unit = b.InHouse("U-1", b.Una));
        await book.TakeAsync(unit, UnitStepKind.Prepared);
        var step = (await book.UnitAsync(unit)).Steps.Single();
        const string late = "Only whoever wrote it can change it, and only on the same day. Ask a manager or the owner.";

        await book.RefusedAsync(
            late,
            () => CorrectAsync(book, unit, step, Today.PlusDays(-1), book.Clinic.Acting(book.Stylist, book.ElmRow))
        );
        book.Clinic.Clock.AdvanceDays(1);
        await book.RefusedAsync(late, () => CorrectAsync(book, unit, step, Today.PlusDays(-1)));
        await CorrectAsync(book, unit, step, Today.PlusDays(-1), book.AsManager);

        Assert.Equal((LocalDate?)Today.PlusDays(-1), (await book.UnitAsync(unit)).Dates.PreparedOn);
    }

    [Fact]
    public async Task The_day_of_an_order_is_corrected_for_all_its_units_and_only_by_who_sees_them_all()
    {
        HairSystem one = null!,
            other = null!,
            far = null!,
            beside = null!;
        WorkshopOrder order = null!;
        await using var book = await UnitBook.OpenAsync(
            server,
            b =>
            {
                order = b.Order("7", Today.PlusDays(-30), one = b.Draft("U-1", b.Una), other = b.Draft("U-2", b.Ben));
                b.Order("8", Today.PlusDays(-30), far = b.Draft("U-3", b.Far), beside = b.Draft("U-4", b.Ben));
            }
        );
        var sent = (await book.UnitAsync(one)).Steps.Single();

        var screen = await book.Clinic.UseAsync<Slice, Slice.Screen?>(book.AsManager, s => s.OpenAsync(one.Id, sent.Id, Cancel));
        Assert.Equal(("7", Today.PlusDays(-30)), (screen!.Of!.OfOrder, screen.Of.On));
        await CorrectAsync(book, one, sent, Today.PlusDays(-32), book.AsManager);

        Assert.Equal(
            "2027-01-02 2 2027-01-02",
            await book.AskAsync(
                "select concat_ws(' ', max(o.sent_on), count(*), max(u.ordered_on)) from hair_systems u"
                    + $" join workshop_orders o on o.id = u.order_id where o.id = '{order.Id}' and u.ordered_on = date '2027-01-02'"
                    + " having count(*) = 2"
            )
        );
        Assert.Equal(
            (Today.PlusDays(-32), 2),
            ((await book.UnitAsync(other)).DayOf((await book.UnitAsync(other)).Steps[0]), (await book.UnitAsync(other)).Steps.Count)
        );
        var hidden = (await book.UnitAsync(beside)).Steps.Single();
        await book.RefusedAsync(
            "Order {0} has units that are not yours to see. Ask someone who sees them all.",
            () => CorrectAsync(book, beside, hidden, Today.PlusDays(-32), book.AsManager)
        );
        await CorrectAsync(book, beside, hidden, Today.PlusDays(-32), book.AsOwner);
        Assert.Equal((LocalDate?)Today.PlusDays(-32), (await book.UnitAsync(far)).Dates.OrderedOn);
    }

    [Fact]
    public async Task A_day_is_not_moved_over_a_day_on_a_head()
    {
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(
            server,
            b =>
            {
                unit = b.InHouse("U-1", b.Una);
                var entry = new UnitStepEntry(Guid.CreateVersion7(), Today, b.Scene.Now - Duration.FromHours(1), b.Desk.Id);
                unit.NotePreparation(Today.PlusDays(-5), entry);
                b.Scene.AddBond(b.Una, unit, Today.PlusDays(-2), b.Adhesive);
            }
        );
        var prepared = (await book.UnitAsync(unit)).Steps.Single();

        await book.RefusedAsync(
            "Unit {0} has been on a head since {1}: choose that day or earlier.",
            () => CorrectAsync(book, unit, prepared, Today.PlusDays(-1), book.AsManager)
        );
        await CorrectAsync(book, unit, prepared, Today.PlusDays(-2), book.AsManager);

        var stored = await book.UnitAsync(unit);
        Assert.Equal((UnitState.Bonded, (LocalDate?)Today.PlusDays(-2)), (stored.State, stored.Dates.PreparedOn));
    }

    [Fact]
    public async Task Of_a_unit_lent_to_a_client_of_another_salon_nothing_is_done_from_afar()
    {
        HairSystem stock = null!;
        await using var book = await UnitBook.OpenAsync(server, b => stock = b.InHouse("N-1", null));
        await book.TakeAsync(stock, UnitStepKind.Lent, i => (i.ClientId, i.DueBackOn) = (book.Una.Id, Today.PlusDays(9)));
        var lent = (await book.UnitAsync(stock)).Steps.Single();
        const string elsewhere = "Unit {0} was lent to a client of another salon. Ask somebody there.";

        await book.RefusedAsync(elsewhere, () => CorrectAsync(book, stock, lent, Today.PlusDays(-1), book.AsElsewhere));
        await book.RefusedAsync(elsewhere, () => book.TakeAsync(stock, UnitStepKind.Lost, i => i.Note = "gone", book.AsElsewhere));
        await CorrectAsync(book, stock, lent, Today.PlusDays(-1));

        Assert.Equal("2027-02-02", await book.AskAsync("select lent_on from unit_loans"));
    }

    [Fact]
    public async Task Two_who_correct_the_same_day_at_the_same_moment_are_told_apart()
    {
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(server, b => unit = b.Arrived("U-1", b.Una, daysAgo: 3));
        var arrived = (await book.UnitAsync(unit)).Steps.Single(s => s.Kind == UnitStepKind.Arrived);

        var came = await UnitBook.BothAsync(
            () => CorrectAsync(book, unit, arrived, Today.PlusDays(-5), book.AsManager),
            () => CorrectAsync(book, unit, arrived, Today.PlusDays(-5), book.AsOwner)
        );

        var told = Assert.Single(came.OfType<Exception>());
        Assert.True(told is HairClinic.Domain.Practices.Refusal or OvertakenException, told.ToString());
        Assert.Single((await book.UnitAsync(unit)).Steps, s => s.Kind == UnitStepKind.DayCorrected);
    }

    [Fact]
    public void The_form_asks_for_a_day_and_a_reason()
    {
        var check = new CorrectStepDayRules().Validate(new Slice.Input());

        Assert.Equal(["Say on which day it was.", "Say what was wrong with it."], check.Errors.Select(e => e.ErrorMessage));
    }

    private static Task<Slice.Outcome> CorrectAsync(
        UnitBook book,
        HairSystem unit,
        UnitStep step,
        LocalDate on,
        PersonActor? by = null,
        string because = "typed wrong"
    )
    {
        var input = new Slice.Input
        {
            UnitId = unit.Id,
            StepId = step.Id,
            On = on,
            Because = because,
        };
        return book.Clinic.UseAsync<Slice, Slice.Outcome>(by ?? book.AtDesk, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
    }
}
