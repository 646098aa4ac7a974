using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Orders;
using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Features.Units;
using HairClinic.Web.Fence;
using NodaTime;
using Details = HairClinic.Web.Features.Units.OrderDetails;
using Slice = HairClinic.Web.Features.Units.TakeOrderStep;

namespace HairClinic.Web.Tests.Features.Units.TakeOrderStep;

public sealed class TakeOrderStepTests(PgServer server)
{
    private static readonly LocalDate Today = UnitBook.Today;
    private HairSystem _una = null!;
    private HairSystem _ben = null!;
    private HairSystem _far = null!;
    private WorkshopOrder _order = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_the_workshop_says_comes_to_the_lines_one_sees_at_once_and_to_the_others_by_the_job()
    {
        await using var book = await OpenAsync();

        foreach (
            var (step, state) in new[]
            {
                (UnitStepKind.Acknowledged, UnitState.Acknowledged),
                (UnitStepKind.Promised, UnitState.Acknowledged),
                (UnitStepKind.Shipped, UnitState.Shipped),
            }
        )
        {
            var unseen = await book.UnitAsync(_far);
            var outcome = await SaveAsync(book, Input(book, step));

            Assert.Equal(("7", 2), (outcome.Number, outcome.Units));
            foreach (var seen in new[] { _una, _ben })
                await book.AssertAsync(seen, state, UnitPlace.Workshop, step);
            Assert.Equal(
                (unseen.State, unseen.Steps.Count),
                ((await book.UnitAsync(_far)).State, (await book.UnitAsync(_far)).Steps.Count)
            );
            await book.WorkAsync();
            // By the job, in the name of whoever wrote it.
            await book.AssertAsync(_far, state, UnitPlace.Workshop, step);
        }

        Assert.Equal("3 2027-03-15", await book.AskAsync("select count(*) || ' ' || max(promised_for) from promise_revisions"));
        await book.RefusedAsync("Order {0} was sent on {1} already.", () => SaveAsync(book, Input(book, UnitStepKind.Shipped)));
        await book.RefusedAsync("Order {0} was confirmed on {1} already.", () => SaveAsync(book, Input(book, UnitStepKind.Acknowledged)));
    }

    [Fact]
    public async Task Who_does_not_see_a_line_sees_how_many_there_are_and_no_more()
    {
        await using var book = await OpenAsync();

        var here = await OpenAsync(book, book.AtDesk);
        var there = await OpenAsync(book, book.AsElsewhere);

        Assert.Equal(("U-1 U-2", 1), (string.Join(' ', here.Coming.Select(c => c.Serial)), here.Unseen));
        Assert.Equal(("U-3", 2), (string.Join(' ', there.Coming.Select(c => c.Serial)), there.Unseen));
        var page = await book.Clinic.UseAsync<Details, Details.Screen?>(book.AtDesk, s => s.OpenAsync(_order.Id, Cancel));
        Assert.Equal((2, 1, 120_000L), (page!.Lines.Count, page.Unseen, page.Total!.Value));
        Assert.DoesNotContain("Farah", page.ToString() + string.Concat(page.Lines), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_parcel_is_received_with_what_was_in_it_and_not_before_it_was_ordered_or_tomorrow()
    {
        await using var book = await OpenAsync();
        Slice.Input Arrival(Guid unit) => Input(book, UnitStepKind.Arrived) with { UnitIds = [unit] };

        await book.RefusedAsync(
            "{0} is in the future: choose today or earlier.",
            () => SaveAsync(book, Arrival(_una.Id) with { On = Today.PlusDays(1) })
        );
        await book.RefusedAsync(
            "Unit {0}: the day of “{1}” cannot lie before the day of “{2}”.",
            () => SaveAsync(book, Arrival(_una.Id) with { On = Today.PlusDays(-31) })
        );
        await book.RefusedAsync("Choose the units that arrived.", () => SaveAsync(book, Arrival(_far.Id)));
        await book.RefusedAsync("Say in which salon it is.", () => SaveAsync(book, Arrival(_una.Id) with { SalonId = book.Quayside.Id }));
        await SaveAsync(book, Arrival(_una.Id));

        await book.AssertAsync(_una, UnitState.Arrived, UnitPlace.Salon, UnitStepKind.Arrived);
        Assert.Equal(Today.PlusDays(7), (await book.UnitAsync(_una)).CurrentArrival!.ClaimUntil);
        Assert.Equal(UnitState.Ordered, (await book.UnitAsync(_ben)).State);
        Assert.Equal(["U-2"], (await OpenAsync(book, book.AtDesk)).Coming.Select(c => c.Serial));
    }

    [Fact]
    public async Task Of_two_who_receive_one_parcel_at_the_same_moment_the_second_is_told_and_each_unit_has_one_arrival()
    {
        await using var book = await OpenAsync();
        Task Receive(PersonActor by) => SaveAsync(book, Input(book, UnitStepKind.Arrived) with { UnitIds = [_una.Id, _ben.Id] }, by);

        var came = await UnitBook.BothAsync(() => Receive(book.AtDesk), () => Receive(book.AsManager));

        Assert.Single(came, e => e is null);
        Assert.Single(
            came,
            e =>
                e
                    is OvertakenException
                        or Refusal { Sentence: "Unit {0} stands at “{1}”: this cannot be done now. Open the unit to see what comes next." }
        );
        Assert.Equal("2", await book.AskAsync("select count(*) from unit_arrivals"));
    }

    // One goes by the parcel, the other by the unit: no lock of one holds the other.
    [Fact]
    public async Task Received_as_a_parcel_and_by_itself_at_the_same_moment_it_arrives_once()
    {
        await using var book = await OpenAsync();

        var came = await UnitBook.BothAsync(
            () => SaveAsync(book, Input(book, UnitStepKind.Arrived) with { UnitIds = [_una.Id] }),
            () => book.TakeAsync(_una, UnitStepKind.Arrived, by: book.AsManager)
        );

        Assert.Single(came, e => e is null);
        Assert.Single(came, e => e is OvertakenException or Refusal);
        Assert.Equal("1", await book.AskAsync("select count(*) from unit_arrivals"));
    }

    [Fact]
    public async Task A_trainee_writes_nothing_of_an_order_and_nobody_an_inspection()
    {
        await using var book = await OpenAsync();

        var before = await book.RowsAsync();
        // No order is theirs to write: for them there is none that they could change.
        await Assert.ThrowsAsync<OvertakenException>(() => SaveAsync(book, Input(book, UnitStepKind.Acknowledged), book.AsTrainee));
        Assert.Equal(before, await book.RowsAsync());
        await book.RefusedAsync(
            "This is not done here. Open the unit, and look what comes next.",
            () => SaveAsync(book, Input(book, UnitStepKind.Inspected))
        );
        Assert.Equal(
            ["Choose the day that was promised."],
            new TakeOrderStepRules()
                .Validate(Input(book, UnitStepKind.Promised) with { PromisedFor = null })
                .Errors.Select(e => e.ErrorMessage)
        );
    }

    private Slice.Input Input(UnitBook book, UnitStepKind step) =>
        new()
        {
            OrderId = _order.Id,
            Step = step,
            On = Today,
            PromisedFor = Today.PlusDays(40),
            SaidBy = "Ines",
            Parcel = "P-1",
            SalonId = book.ElmRow.Id,
        };

    private async Task<Slice.Screen> OpenAsync(UnitBook book, PersonActor by) =>
        (await book.Clinic.UseAsync<Slice, Slice.Screen?>(by, s => s.OpenAsync(_order.Id, UnitStepKind.Arrived, Cancel)))!;

    private static Task<Slice.Outcome> SaveAsync(UnitBook book, Slice.Input input, PersonActor? by = null)
    {
        book.Clinic.Clock.AdvanceMinutes(1);
        return book.Clinic.UseAsync<Slice, Slice.Outcome>(by ?? book.AtDesk, s => s.SaveAsync(Guid.CreateVersion7(), input, Cancel));
    }

    private Task<UnitBook> OpenAsync() =>
        UnitBook.OpenAsync(
            server,
            b =>
            {
                (_una, _ben, _far) = (b.Draft("U-1", b.Una), b.Draft("U-2", b.Ben), b.Draft("U-3", b.Far));
                _order = b.Order("7", Today.PlusDays(-30), _una, _ben, _far);
            }
        );
}
