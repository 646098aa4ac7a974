using HairClinic.Domain.HairSystems;
using HairClinic.Web.Features.Units;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Units.TakeStep;

namespace HairClinic.Web.Tests.Features.Units.TakeStep;

/// <summary>From the workshop to the shelf: each kind of step once, its line in the trail, and where the unit is then.</summary>
public sealed class TakeStepTests(PgServer server)
{
    private static readonly LocalDate Today = UnitBook.Today;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_the_workshop_says_of_one_unit_is_kept_and_it_arrives_with_its_time_for_a_claim()
    {
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(server, b => b.Order("7", Today.PlusDays(-30), unit = b.Draft("U-1", b.Una)));

        await book.TakeAsync(unit, UnitStepKind.Acknowledged, i => i.On = Today.PlusDays(-29));
        await book.AssertAsync(unit, UnitState.Acknowledged, UnitPlace.Workshop, UnitStepKind.Acknowledged, Today.PlusDays(-29));
        await book.TakeAsync(unit, UnitStepKind.Promised, i => (i.PromisedFor, i.SaidBy) = (Today.PlusDays(9), "Ines"));
        await book.AssertAsync(unit, UnitState.Acknowledged, UnitPlace.Workshop, UnitStepKind.Promised);
        await book.TakeAsync(unit, UnitStepKind.Shipped);
        await book.AssertAsync(unit, UnitState.Shipped, UnitPlace.Workshop, UnitStepKind.Shipped);
        await book.RefusedAsync(
            "{0} is in the future: choose today or earlier.",
            () => book.TakeAsync(unit, UnitStepKind.Arrived, i => i.On = Today.PlusDays(1))
        );
        await book.RefusedAsync(
            "Unit {0}: the day of “{1}” cannot lie before the day of “{2}”.",
            () => book.TakeAsync(unit, UnitStepKind.Arrived, i => i.On = Today.PlusDays(-1))
        );
        await book.RefusedAsync(
            "Say in which salon it is.",
            () => book.TakeAsync(unit, UnitStepKind.Arrived, i => i.SalonId = book.Quayside.Id)
        );
        await book.TakeAsync(unit, UnitStepKind.Arrived);
        await book.AssertAsync(unit, UnitState.Arrived, UnitPlace.Salon, UnitStepKind.Arrived);

        var stored = await book.UnitAsync(unit);
        Assert.Equal(("Ines", Today.PlusDays(9)), (stored.Promises[0].SaidBy, stored.Promises[0].PromisedFor));
        // Seven days, as a workshop begins with.
        Assert.Equal((Today.PlusDays(7), false), (stored.CurrentArrival!.ClaimUntil!.Value, stored.CurrentArrival.Damaged));
    }

    [Fact]
    public async Task What_arrives_damaged_needs_a_word_of_what_is_damaged()
    {
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(server, b => b.Order("7", Today.PlusDays(-30), unit = b.Draft("U-1", b.Una)));

        await book.RefusedAsync("Write what is damaged.", () => book.TakeAsync(unit, UnitStepKind.Arrived, i => i.Damaged = true));
        await book.TakeAsync(unit, UnitStepKind.Arrived, i => (i.Damaged, i.Condition) = (true, "lace torn"));

        Assert.Equal("lace torn", (await book.UnitAsync(unit)).CurrentArrival!.Condition);
        Assert.Equal(
            ["Write what is damaged."],
            new TakeStepRules()
                .Validate(
                    new Slice.Input
                    {
                        Step = UnitStepKind.Arrived,
                        On = Today,
                        SalonId = book.ElmRow.Id,
                        Damaged = true,
                    }
                )
                .Errors.Select(e => e.ErrorMessage)
        );
    }

    [Fact]
    public async Task An_arrival_is_accepted_made_again_or_refused_after_it_was_held_against_its_order()
    {
        HairSystem good = null!,
            wrong = null!,
            bad = null!;
        await using var book = await UnitBook.OpenAsync(
            server,
            b => (good, wrong, bad) = (b.Arrived("U-1", b.Una), b.Arrived("U-2", b.Una), b.Arrived("U-3", b.Una))
        );

        await book.TakeAsync(good, UnitStepKind.Inspected, i => i.SetAllAsOrdered());
        await book.AssertAsync(good, UnitState.Accepted, UnitPlace.Salon, UnitStepKind.Accepted);
        await book.RefusedAsync(
            "Something is not as ordered: accept it with a note, or send it back.",
            () => book.TakeAsync(wrong, UnitStepKind.Inspected, i => (i.KindAsOrdered, i.Decision) = (false, ArrivalDecision.Accepted))
        );
        await book.RefusedAsync(
            "Say who pays for making it again.",
            () => book.TakeAsync(wrong, UnitStepKind.Inspected, i => (i.Decision, i.Note) = (ArrivalDecision.Remake, "wrong base"))
        );
        await book.TakeAsync(wrong, UnitStepKind.Inspected, i => Remake(i, Today.PlusDays(28)));
        await book.AssertAsync(wrong, UnitState.Remake, UnitPlace.Workshop, UnitStepKind.SentBack);
        await book.TakeAsync(bad, UnitStepKind.Inspected, i => (i.Decision, i.Note) = (ArrivalDecision.Refused, "not ours"));
        await book.AssertAsync(bad, UnitState.Refused, UnitPlace.Workshop, UnitStepKind.Refused);
        await book.RefusedAsync(
            "Unit {0} stands at “{1}”: this cannot be done now. Open the unit to see what comes next.",
            () => book.TakeAsync(good, UnitStepKind.Inspected, i => i.SetAllAsOrdered())
        );

        var remade = await book.UnitAsync(wrong);
        Assert.Equal(
            (1, Today.PlusDays(28), RemakePayer.Workshop),
            (remade.RemadeTimes, remade.Promises[^1].PromisedFor, remade.CurrentArrival!.RemakePaidBy)
        );
        await book.TakeAsync(wrong, UnitStepKind.Arrived);
        Assert.Equal([1, 2], (await book.UnitAsync(wrong)).Arrivals.Select(a => a.Number).Order());
    }

    [Fact]
    public async Task In_house_it_is_prepared_cleaned_and_moved_within_the_salon_or_home_with_the_client()
    {
        HairSystem unit = null!,
            stock = null!;
        await using var book = await UnitBook.OpenAsync(server, b => (unit, stock) = (b.InHouse("U-1", b.Una), b.InHouse("N-1", null)));

        await book.TakeAsync(unit, UnitStepKind.Prepared);
        await book.AssertAsync(unit, UnitState.Prepared, UnitPlace.Salon, UnitStepKind.Prepared);
        foreach (
            var (step, cleaning) in new[]
            {
                (UnitStepKind.SetForCleaning, UnitCleaning.ToBeCleaned),
                (UnitStepKind.LeftToDry, UnitCleaning.Drying),
                (UnitStepKind.Cleaned, UnitCleaning.Clean),
            }
        )
        {
            await book.TakeAsync(unit, step);
            await book.AssertAsync(unit, UnitState.Prepared, UnitPlace.Salon, step);
            Assert.Equal(cleaning, (await book.UnitAsync(unit)).Cleaning);
        }
        await book.TakeAsync(unit, UnitStepKind.Moved, i => i.Spot = " drawer 3 ");
        Assert.Equal("drawer 3", (await book.UnitAsync(unit)).Spot);
        await book.TakeAsync(unit, UnitStepKind.Moved, i => i.WithClient = true);
        await book.AssertAsync(unit, UnitState.Prepared, UnitPlace.Client, UnitStepKind.Moved);
        await book.RefusedAsync(
            "Unit {0} is in stock: lend it, or give it to a client.",
            () => book.TakeAsync(stock, UnitStepKind.Moved, i => i.WithClient = true)
        );
    }

    [Fact]
    public async Task Nothing_is_done_in_house_before_the_day_it_came()
    {
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(server, b => unit = b.InHouse("N-1", null));
        void Early(Slice.Input i) => (i.On, i.ClientId, i.DueBackOn, i.Repair) = (Today.PlusDays(-61), book.Una.Id, Today, RepairKind.Rim);

        foreach (
            var step in new[]
            {
                UnitStepKind.Cleaned,
                UnitStepKind.Moved,
                UnitStepKind.Lent,
                UnitStepKind.GivenToClient,
                UnitStepKind.SentForRepair,
            }
        )
            await book.RefusedAsync("Unit {0} was not here yet on {1}.", () => book.TakeAsync(unit, step, Early));
    }

    [Fact]
    public async Task A_repair_elsewhere_takes_it_away_and_brings_it_back_with_what_it_cost()
    {
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(server, b => unit = b.InHouse("U-1", b.Una));

        await book.RefusedAsync(
            "Unit {0} stands at “{1}”: this cannot be done now. Open the unit to see what comes next.",
            () => book.TakeAsync(unit, UnitStepKind.BackFromRepair)
        );
        await book.TakeAsync(
            unit,
            UnitStepKind.SentForRepair,
            i => (i.On, i.Repair, i.SentTo, i.PromisedFor) = (Today.PlusDays(-9), RepairKind.Rim, "Workshop North", Today.PlusDays(5))
        );
        await book.AssertAsync(unit, UnitState.Away, UnitPlace.Workshop, UnitStepKind.SentForRepair, Today.PlusDays(-9));
        await book.RefusedAsync(
            "It went out on {0}, so it cannot be back before.",
            () => book.TakeAsync(unit, UnitStepKind.BackFromRepair, i => i.On = Today.PlusDays(-10))
        );
        await book.TakeAsync(unit, UnitStepKind.BackFromRepair, i => i.CostMinor = 4_000);
        await book.AssertAsync(unit, UnitState.Accepted, UnitPlace.Salon, UnitStepKind.BackFromRepair);

        var stored = await book.UnitAsync(unit);
        Assert.Equal(UnitCleaning.ToBeCleaned, stored.Cleaning);
        Assert.Equal(
            (Today, 4_000L, "GBP"),
            (stored.Repairs[0].DoneOn!.Value, stored.Repairs[0].CostMinor!.Value, stored.Repairs[0].Currency)
        );
    }

    [Fact]
    public async Task Stock_is_lent_comes_back_and_becomes_a_clients_own()
    {
        HairSystem stock = null!,
            own = null!;
        await using var book = await UnitBook.OpenAsync(server, b => (stock, own) = (b.InHouse("N-1", null), b.InHouse("U-1", b.Ben)));
        void ToUna(Slice.Input i) => (i.ClientId, i.DueBackOn) = (book.Una.Id, Today.PlusDays(14));

        await book.RefusedAsync("Unit {0} is another client's.", () => book.TakeAsync(own, UnitStepKind.Lent, ToUna));
        await book.RefusedAsync(
            "This client is not there any more. They may have been merged with another record.",
            () => book.TakeAsync(stock, UnitStepKind.Lent, i => (i.ClientId, i.DueBackOn) = (book.Far.Id, Today.PlusDays(14)))
        );
        await book.RefusedAsync(
            "A unit that is lent on {0} is due back on a later day.",
            () => book.TakeAsync(stock, UnitStepKind.Lent, i => (i.ClientId, i.DueBackOn) = (book.Una.Id, Today))
        );
        await book.TakeAsync(stock, UnitStepKind.Lent, ToUna);
        await book.AssertAsync(stock, UnitState.Lent, UnitPlace.Client, UnitStepKind.Lent);
        await book.RefusedAsync(
            "Unit {0} stands at “{1}”: this cannot be done now. Open the unit to see what comes next.",
            () => book.TakeAsync(stock, UnitStepKind.GivenToClient, ToUna)
        );
        await book.TakeAsync(stock, UnitStepKind.BackFromLoan);
        await book.AssertAsync(stock, UnitState.Accepted, UnitPlace.Salon, UnitStepKind.BackFromLoan);
        Assert.Equal("2027-02-03", await book.AskAsync("select back_on from unit_loans"));
        await book.RefusedAsync("Unit {0} is lent to nobody.", () => book.TakeAsync(stock, UnitStepKind.BackFromLoan));
        await book.RefusedAsync(
            "Unit {0} is not clean yet. Clean it, say so, and then lend it.",
            () => book.TakeAsync(stock, UnitStepKind.Lent, ToUna)
        );
        await book.TakeAsync(stock, UnitStepKind.Cleaned);
        await book.TakeAsync(stock, UnitStepKind.GivenToClient, ToUna);
        await book.AssertAsync(stock, UnitState.Accepted, UnitPlace.Salon, UnitStepKind.GivenToClient);

        Assert.Equal(book.Una.Id, (await book.UnitAsync(stock)).ClientId);
    }

    [Theory]
    [InlineData(UnitStepKind.Retired, UnitState.Retired, UnitPlace.Salon)]
    [InlineData(UnitStepKind.Damaged, UnitState.Damaged, UnitPlace.Salon)]
    [InlineData(UnitStepKind.KeptAsSpare, UnitState.EmergencySpare, UnitPlace.Salon)]
    [InlineData(UnitStepKind.ReturnedToClient, UnitState.ReturnedToClient, UnitPlace.Client)]
    [InlineData(UnitStepKind.Lost, UnitState.Lost, null)]
    public async Task It_leaves_service_with_a_word_of_why(UnitStepKind step, UnitState state, UnitPlace? place)
    {
        HairSystem unit = null!;
        await using var book = await UnitBook.OpenAsync(server, b => unit = b.InHouse("U-1", b.Una));

        Assert.Equal(
            ["Say why."],
            new TakeStepRules().Validate(new Slice.Input { Step = step, On = Today }).Errors.Select(e => e.ErrorMessage)
        );
        await book.TakeAsync(unit, step, i => i.Note = "thin at the front");

        await book.AssertAsync(unit, state, place, step);
        Assert.Equal(
            ("thin at the front", Today),
            ((await book.UnitAsync(unit)).RetiredBecause, (await book.UnitAsync(unit)).Dates.RetiredOn!.Value)
        );
    }

    [Fact]
    public async Task An_order_is_called_off_and_is_nowhere_and_what_is_in_house_is_not()
    {
        HairSystem unit = null!,
            here = null!;
        await using var book = await UnitBook.OpenAsync(
            server,
            b =>
            {
                b.Order("7", Today.PlusDays(-30), unit = b.Draft("U-1", b.Una));
                here = b.InHouse("U-2", b.Una);
            }
        );

        await book.RefusedAsync(
            "Unit {0} stands at “{1}”: this cannot be done now. Open the unit to see what comes next.",
            () => book.TakeAsync(here, UnitStepKind.Cancelled, i => i.Note = "x")
        );
        await book.TakeAsync(unit, UnitStepKind.Cancelled, i => i.Note = "moves abroad");

        await book.AssertAsync(unit, UnitState.Cancelled, null, UnitStepKind.Cancelled);
    }

    [Fact]
    public async Task What_was_lost_is_found_as_it_was_and_one_kept_for_an_emergency_is_no_better_for_it()
    {
        HairSystem unit = null!,
            spare = null!;
        await using var book = await UnitBook.OpenAsync(
            server,
            b => (unit, spare) = (b.InHouse("U-1", b.Una), b.InHouse("U-2", b.Una, origin: UnitOrigin.OldBook))
        );
        await book.TakeAsync(spare, UnitStepKind.KeptAsSpare, i => (i.On, i.Note) = (Today.PlusDays(-20), "thin"));
        foreach (var lost in new[] { unit, spare })
            await book.TakeAsync(lost, UnitStepKind.Lost, i => (i.On, i.Note) = (Today.PlusDays(-3), "not in the drawer"));

        await book.RefusedAsync(
            "It has been gone since {0}: choose that day or later.",
            () => book.TakeAsync(unit, UnitStepKind.Found, i => i.On = Today.PlusDays(-4))
        );
        foreach (var lost in new[] { unit, spare })
            await book.TakeAsync(lost, UnitStepKind.Found);

        await book.AssertAsync(unit, UnitState.Accepted, UnitPlace.Salon, UnitStepKind.Found);
        await book.AssertAsync(spare, UnitState.EmergencySpare, UnitPlace.Salon, UnitStepKind.Found);
        Assert.Equal(Today.PlusDays(-20), (await book.UnitAsync(spare)).Dates.RetiredOn);
    }

    [Fact]
    public async Task What_is_lost_while_it_is_lent_ends_its_loan()
    {
        HairSystem stock = null!;
        await using var book = await UnitBook.OpenAsync(server, b => stock = b.InHouse("N-1", null));
        await book.TakeAsync(stock, UnitStepKind.Lent, i => (i.On, i.ClientId, i.DueBackOn) = (Today.PlusDays(-5), book.Una.Id, Today));

        await book.TakeAsync(stock, UnitStepKind.Lost, i => i.Note = "left on a train");

        await book.AssertAsync(stock, UnitState.Lost, null, UnitStepKind.Lost);
        Assert.Equal("0", await book.AskAsync("select count(*) from unit_loans where back_on is null"));
    }

    private static void Remake(Slice.Input input, LocalDate promised)
    {
        (input.KindAsOrdered, input.BaseAsOrdered, input.PriceAsOrdered) = (true, false, true);
        (input.Decision, input.Note, input.RemakePaidBy) = (ArrivalDecision.Remake, "wrong base", RemakePayer.Workshop);
        input.PromisedFor = promised;
    }
}
