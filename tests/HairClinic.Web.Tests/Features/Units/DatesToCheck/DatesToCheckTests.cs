using HairClinic.Domain.Checks;
using HairClinic.Domain.HairSystems;
using HairClinic.Web.Fence;
using HairClinic.Web.Learning;
using HairClinic.Web.Workers;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Correcting = HairClinic.Web.Features.Units.CorrectStepDay;
using OrdersSlice = HairClinic.Web.Features.Units.Orders;
using Slice = HairClinic.Web.Features.Units.DatesToCheck;

namespace HairClinic.Web.Tests.Features.Units.DatesToCheck;

public sealed class DatesToCheckTests(PgServer server)
{
    private static readonly LocalDate Today = UnitBook.Today;
    private HairSystem _forgotten = null!;
    private HairSystem _late = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_date_nobody_would_believe_and_a_forgotten_order_are_asked_about_and_left_out_of_the_lead_time()
    {
        await using var book = await OpenAsync();

        var screen = await LookAsync(book, book.AtDesk);

        Assert.Equal(
            [(DateCheckKind.OrderWaiting, "F-1", 400), (DateCheckKind.OrderTook, "L-1", 560)],
            screen.Rows.Select(r => (r.Check.Kind, r.Serial!, r.CalendarDays))
        );
        Assert.All(screen.Rows, r => Assert.InRange(r.Check.UsualFrom, 40, 52));
        Assert.All(screen.Rows, r => Assert.InRange(r.Check.UsualTo, 75, 84));
        Assert.Equal(("Una Test", "Workshop North"), (screen.Rows[0].Client!.Name, screen.Rows[0].Workshop));
        var lead = await book.Clinic.ReadAsync(db => db.StoredLeads.SingleAsync(l => l.UnitKindId == book.Kind.Id, Cancel));
        Assert.Equal((20, 0), (lead.Arrived.Length, lead.Waited.Length));
        Assert.Empty((await LookAsync(book, book.AsElsewhere)).Rows);
        Assert.Equal(2, (await OrdersAsync(book)).DatesToCheck);
    }

    [Fact]
    public async Task Dates_that_are_right_count_from_the_next_night_and_are_not_asked_about_again()
    {
        await using var book = await OpenAsync();
        var row = (await LookAsync(book, book.AtDesk)).Rows.Single(r => r.Serial == "L-1");

        await AnswerAsync(book, row, DateCheckAnswer.Right);
        await RunAsync(book);

        Assert.DoesNotContain((await LookAsync(book, book.AtDesk)).Rows, r => r.Serial == "L-1");
        var lead = await book.Clinic.ReadAsync(db => db.StoredLeads.SingleAsync(l => l.UnitKindId == book.Kind.Id, Cancel));
        Assert.Contains(560, lead.Arrived);
        var stored = await book.Clinic.ReadAsync(db => db.DateChecks.SingleAsync(c => c.HairSystemId == _late.Id, Cancel));
        Assert.Equal((DateCheckAnswer.Right, book.Desk.Id, Today), (stored.Answer, stored.AnsweredBy, stored.AnsweredOn));
        await Refused.SayingAsync(
            "Somebody answered this a moment ago. Open the list again.",
            () => AnswerAsync(book, row, DateCheckAnswer.Wrong)
        );
    }

    [Fact]
    public async Task Dates_that_are_wrong_for_good_never_count()
    {
        await using var book = await OpenAsync();

        await AnswerAsync(book, (await LookAsync(book, book.AtDesk)).Rows.Single(r => r.Serial == "L-1"), DateCheckAnswer.Wrong);
        await RunAsync(book);

        Assert.DoesNotContain((await LookAsync(book, book.AtDesk)).Rows, r => r.Serial == "L-1");
        var lead = await book.Clinic.ReadAsync(db => db.StoredLeads.SingleAsync(l => l.UnitKindId == book.Kind.Id, Cancel));
        Assert.Equal(20, lead.Arrived.Length);
    }

    [Fact]
    public async Task A_forgotten_order_is_not_counted_on_until_somebody_says_that_it_is_still_on_its_way()
    {
        await using var book = await OpenAsync();
        Assert.Equal(0, await InFlightAsync(book));
        var row = (await LookAsync(book, book.AtDesk)).Rows.Single(r => r.Serial == "F-1");

        await Refused.SayingAsync("Say that it arrived, or that it was called off.", () => AnswerAsync(book, row, DateCheckAnswer.Wrong));
        await AnswerAsync(book, row, DateCheckAnswer.Right);
        await book.WorkAsync();

        Assert.Equal(1, await InFlightAsync(book));
        await RunAsync(book);
        Assert.Equal(1, await InFlightAsync(book));
        Assert.Equal(400, Assert.Single(await WaitedAsync(book)));
    }

    [Fact]
    public async Task Four_weeks_later_it_is_asked_about_again_and_what_was_said_stands_so_far()
    {
        await using var book = await OpenAsync();
        await AnswerAsync(book, (await LookAsync(book, book.AtDesk)).Rows.Single(r => r.Serial == "F-1"), DateCheckAnswer.Right);

        book.Clinic.Clock.AdvanceDays(27);
        await RunAsync(book);
        Assert.DoesNotContain((await LookAsync(book, book.AtDesk)).Rows, r => r.Serial == "F-1");
        Assert.Equal(427, Assert.Single(await WaitedAsync(book)));
        book.Clinic.Clock.AdvanceDays(1);
        await RunAsync(book);

        Assert.Contains((await LookAsync(book, book.AtDesk)).Rows, r => r.Serial == "F-1");
        Assert.Equal(400, Assert.Single(await WaitedAsync(book)));
        Assert.Equal(0, await InFlightAsync(book));
    }

    [Fact]
    public async Task A_date_typed_wrong_is_asked_about_at_once_and_not_any_more_once_it_is_corrected()
    {
        HairSystem unit = null!;
        await using var book = await OpenAsync(b => b.Order("1023", Today.PlusDays(-300), unit = b.Draft("T-1", b.Ben)));

        await book.TakeAsync(unit, UnitStepKind.Arrived);

        var row = (await LookAsync(book, book.AtDesk)).Rows.Single(r => r.Serial == "T-1");
        Assert.Equal((DateCheckKind.OrderTook, "1023", 300), (row.Check.Kind, row.Order, row.CalendarDays));
        Assert.Equal([UnitStepKind.Ordered, UnitStepKind.Arrived], row.Steps.Select(s => s.Kind));
        var card = await book.Clinic.UseAsync<HairClinic.Web.Features.Units.UnitCard, HairClinic.Web.Features.Units.UnitCard.Screen?>(
            book.AtDesk,
            s => s.OpenAsync(unit.Id, Cancel)
        );
        Assert.Equal(300, Assert.Single(card!.ToCheck).CalendarDays);

        var input = new Correcting.Input
        {
            UnitId = unit.Id,
            StepId = row.Steps[0].StepId,
            On = Today.PlusDays(-60),
            Because = "typed wrong",
        };
        await book.Clinic.UseAsync<Correcting, Correcting.Outcome>(book.AsManager, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));

        Assert.DoesNotContain((await LookAsync(book, book.AtDesk)).Rows, r => r.Serial == "T-1");
        await RunAsync(book);
        Assert.Equal(0, await book.Clinic.ReadAsync(db => db.DateChecks.CountAsync(c => c.HairSystemId == unit.Id, Cancel)));
    }

    [Fact]
    public async Task A_date_corrected_to_one_nobody_would_believe_is_asked_about_at_once()
    {
        HairSystem unit = null!;
        await using var book = await OpenAsync(b => b.Order("1023", Today.PlusDays(-60), unit = b.Draft("T-1", b.Ben)));
        await book.TakeAsync(unit, UnitStepKind.Arrived);
        Assert.DoesNotContain((await LookAsync(book, book.AtDesk)).Rows, r => r.Serial == "T-1");
        var sent = (await book.UnitAsync(unit)).Steps.Single(s => s.Kind == UnitStepKind.Ordered);

        var input = new Correcting.Input
        {
            UnitId = unit.Id,
            StepId = sent.Id,
            On = Today.PlusDays(-600),
            Because = "typed wrong",
        };
        await book.Clinic.UseAsync<Correcting, Correcting.Outcome>(book.AsManager, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));

        Assert.Contains((await LookAsync(book, book.AtDesk)).Rows, r => r.Serial == "T-1");
    }

    [Fact]
    public async Task Another_salons_question_is_not_answered_from_here()
    {
        await using var book = await OpenAsync();
        var row = (await LookAsync(book, book.AtDesk)).Rows.Single(r => r.Serial == "F-1");

        await Refused.SayingAsync(
            "This is not asked any more. Open the list again.",
            () => AnswerAsync(book, row, DateCheckAnswer.Right, book.AsElsewhere)
        );
    }

    /// <summary>Twenty orders of 41 to 87 days, one whose dates say 560, and one that is on its way for 400 days; the night's run was there.</summary>
    private async Task<UnitBook> OpenAsync(Action<UnitBook>? more = null)
    {
        int[] usual = [43, 48, 50, 52, 54, 56, 57, 59, 60, 62, 64, 65, 67, 69, 71, 73, 75, 79, 82, 90];
        var book = await UnitBook.OpenAsync(
            server,
            b =>
            {
                for (var i = 0; i < usual.Length; i++)
                    Came(b, $"U-{i + 1}", Today.PlusDays(-100 - 10 * i), usual[i]);
                _late = Came(b, "L-1", Today.PlusDays(-20), 560, b.Una);
                b.Order("1020", Today.PlusDays(-400), _forgotten = b.Draft("F-1", b.Una));
                // Who never wore a unit has no plan.
                var worn = b.InHouse("W-1", b.Una);
                b.Scene.AddBond(b.Una, worn, Today.PlusDays(-10), b.Adhesive);
                more?.Invoke(b);
            }
        );
        await RunAsync(book);
        return book;
    }

    // As an old book has them: dates, and no steps.
    private static HairSystem Came(UnitBook book, string serial, LocalDate on, int days, HairClinic.Domain.Clients.Client? client = null)
    {
        var unit = new HairSystem(Guid.CreateVersion7(), serial, client?.Id, book.Kind.Id, on.PlusDays(-days));
        unit.ImportState(
            UnitState.Retired,
            new UnitDates
            {
                OrderedOn = on.PlusDays(-days),
                ArrivedOn = on,
                RetiredOn = on,
            },
            "worn out"
        );
        book.Scene.Db.HairSystems.Add(unit);
        return unit;
    }

    private static async Task RunAsync(UnitBook book)
    {
        book.Clinic.Clock.AdvanceSeconds(1);
        await book.Clinic.ReadAsync(db => RecalculationQueue.RequestAsync(db, null, book.Clinic.Clock.GetCurrentInstant(), Cancel));
        await book.Clinic.UseAsync<RecalculationRunner, bool>(book.Clinic.Job, r => r.RunAsync(Cancel));
        Assert.Equal(
            Domain.LoadAhead.RecalculationState.Done,
            await book.Clinic.ReadAsync(db => db.Recalculations.OrderByDescending(r => r.AskedAt).Select(r => r.State).FirstAsync(Cancel))
        );
    }

    private static Task<Slice.Screen> LookAsync(UnitBook book, PersonActor by) =>
        book.Clinic.UseAsync<Slice, Slice.Screen>(by, s => s.OpenAsync(Cancel));

    private static Task<Slice.Outcome> AnswerAsync(UnitBook book, Slice.Row row, DateCheckAnswer answer, PersonActor? by = null) =>
        book.Clinic.UseAsync<Slice, Slice.Outcome>(
            by ?? book.AtDesk,
            s => s.SaveAsync(Guid.CreateVersion7(), new Slice.Input(row.Check.Id, answer), Cancel)
        );

    private static Task<OrdersSlice.Screen> OrdersAsync(UnitBook book) =>
        book.Clinic.UseAsync<OrdersSlice, OrdersSlice.Screen>(
            book.AtDesk,
            s => s.OpenAsync(HairClinic.Web.Features.Units.OrdersQuestion.Everything, Cancel)
        );

    private Task<int> InFlightAsync(UnitBook book) =>
        book.Clinic.ReadAsync(db => db.ReorderPlans.Where(p => p.ClientId == book.Una.Id).Select(p => p.InFlight).SingleAsync(Cancel));

    private static Task<double[]> WaitedAsync(UnitBook book) =>
        book.Clinic.ReadAsync(db => db.StoredLeads.Where(l => l.UnitKindId == book.Kind.Id).Select(l => l.Waited).SingleAsync(Cancel));
}
