using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.LoadAhead;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Replacement;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Wear.Curves;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Features.Outlook;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Outlook.Ahead;

namespace HairClinic.Web.Tests.Features.Outlook.Ahead;

public sealed class AheadTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static readonly LocalDate Today = new(2027, 2, 3);
    private Salon _elmRow = null!;
    private Salon _quayside = null!;
    private Person _owner = null!;
    private Person _manager = null!;
    private Product _adhesive = null!;
    private UnitKind _kind = null!;

    [Fact]
    public async Task Whoever_was_without_hair_is_found_by_salon_with_the_days_and_why()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            Wearing(scene, "kept", _elmRow, gapDays: 0);
            // Ten days, and the next was ordered seventy days before it came: less than 77 days and fourteen of preparation before the hair ended.
            Wearing(scene, "bare", _elmRow, gapDays: 10);
            Wearing(scene, "far", _quayside, gapDays: 0);
            scene.AddClient("new", "Una Never", _elmRow);
        });

        var promise = (await OpenPageAsync(clinic, _owner, _elmRow, _quayside)).Promise;

        Assert.Equal(["Elm Row", "Quayside", ""], promise.Salons.Select(s => s.Name));
        Assert.Equal([new(1, 2), new(1, 1), new BinomialProportion(2, 3)], promise.Salons.Select(s => s.Kept));
        Assert.Equal([(1, 10), (0, 0), (1, 10)], promise.Salons.Select(s => (s.Gaps, s.GapDays)));
        var row = Assert.Single(promise.Gaps);
        Assert.Equal(("bare", "Elm Row", GapCause.OrderedTooLate), (row.Code, row.Salon, row.Gap.Cause));
        Assert.Equal((Today.PlusDays(-59), Today.PlusDays(-50)), (row.Gap.From, row.Gap.Through));
        Assert.Equal([(GapCause.OrderedTooLate, 1, 10)], promise.Causes);
    }

    [Fact]
    public async Task Of_units_worn_out_one_of_two_was_replaced_on_time()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            Wearing(scene, "kept", _elmRow, gapDays: 0);
            Wearing(scene, "bare", _elmRow, gapDays: 10);
        });

        var page = await OpenPageAsync(clinic, _owner, _elmRow, _quayside);

        Assert.Equal(new BinomialProportion(1, 2), page.Promise.Salons[0].InTime);
    }

    [Fact]
    public async Task A_manager_sees_the_clients_of_their_salons_and_the_load_of_all()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            Plan(scene, Wearing(scene, "near", _elmRow, gapDays: 10), expected: 3);
            Plan(scene, Wearing(scene, "far", _quayside, gapDays: 10), expected: 4);
            Expect(scene, _elmRow, minutes: 600);
            Expect(scene, _quayside, minutes: 300);
        });

        var page = await OpenPageAsync(clinic, _manager, _elmRow);

        Assert.False(page.AllSalons);
        Assert.Equal(["near"], page.Promise.Gaps.Select(b => b.Code));
        Assert.Equal(["near"], page.GapRisks.AtRisk.Select(r => r.Code));
        Assert.Equal([600.0, 300.0, 900.0], page.Load.Select(w => w.Load.Week(0).ChairMinutes));
    }

    [Fact]
    public async Task Whoever_was_let_in_is_listed_with_the_salon_they_come_from()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            var guest = Wearing(scene, "guest", _quayside, gapDays: 10);
            Plan(scene, guest, expected: 3);
            var from = scene.Now - Duration.FromDays(1);
            scene.Db.ClientGrants.Add(
                new ClientGrant(Guid.CreateVersion7(), guest.Id, _elmRow.Id, from, from + Duration.FromDays(9), _owner.Id, "Holiday")
            );
        });

        var page = await OpenPageAsync(clinic, _manager, _elmRow);

        Assert.Equal("Quayside", page.Salons[Assert.Single(page.GapRisks.AtRisk).SalonId].Name);
        Assert.Empty(page.Promise.Gaps);
    }

    [Fact]
    public async Task Who_endangers_it_comes_worst_first_fifty_at_most_and_then_the_orders_of_the_next_thirty_days()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            for (var i = 0; i < 52; i++)
                Plan(scene, scene.AddClient($"r{i:00}", $"Una Test {i}", _elmRow), expected: i);
            foreach (var days in new[] { 31, 30, 2 })
                Plan(scene, scene.AddClient($"s{days}", $"Una Soon {days}", _elmRow), expected: 0, Today.PlusDays(days));
        });

        var danger = (await OpenPageAsync(clinic, _owner, _elmRow, _quayside)).GapRisks;

        Assert.Equal((50, 52, 2), (danger.AtRisk.Count, danger.AllAtRisk, danger.AllSoon));
        Assert.Equal(["r51", "r50"], danger.AtRisk.Take(2).Select(r => r.Code));
        Assert.Equal(["s2", "s30"], danger.Soon.Select(r => r.Code));
    }

    [Fact]
    public async Task Who_lacks_a_spare_comes_after_those_the_chance_of_a_gap_names_and_hides_none_of_them()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            for (var i = 0; i < 52; i++)
                Plan(scene, scene.AddClient($"p{i:00}", $"Una Spare {i}", _elmRow), expected: 0, Today.PlusDays(90 - i), sparesMissing: 1);
            Plan(scene, scene.AddClient("s30", "Una Soon", _elmRow), expected: 0, Today.PlusDays(30));
            Plan(scene, scene.AddClient("s20", "Una Both", _elmRow), expected: 0, Today.PlusDays(20), sparesMissing: 1);
            Plan(scene, scene.AddClient("r", "Una Risk", _elmRow), expected: 3, sparesMissing: 1);
            Plan(scene, scene.AddClient("w", "Una Wait", _elmRow), expected: 0, Today.PlusDays(90));
        });

        var found = (await OpenPageAsync(clinic, _owner, _elmRow, _quayside)).GapRisks;

        Assert.Equal(["r"], found.AtRisk.Select(r => r.Code));
        Assert.Equal(["s20", "s30"], found.Soon.Select(r => r.Code));
        Assert.Equal((50, 52), (found.Spares.Count, found.AllSpares));
        // Whose hair the chance of a gap sees end first comes first.
        Assert.Equal(["p51", "p50"], found.Spares.Take(2).Select(r => r.Code));
    }

    [Fact]
    public async Task Chairs_and_hands_are_what_is_open_and_worked_and_the_whole_is_the_sum()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            // Nine hours on five days. In the second week the salon is closed on one of them, in the third the stylist is away.
            _elmRow.AddClosure(Guid.CreateVersion7(), Today.PlusWeeks(1), Today.PlusWeeks(1), "works");
            var stylist = scene.Hire("Sol Test", StaffRole.Stylist, _elmRow);
            stylist.SetWorkingHours([
                (Guid.CreateVersion7(), _elmRow.Id, IsoDayOfWeek.Wednesday, new LocalTime(10, 0), new LocalTime(14, 0)),
            ]);
            stylist.AddAbsence(Guid.CreateVersion7(), Today.PlusWeeks(2), Today.PlusWeeks(3).PlusDays(-1), "away");
            Expect(scene, _elmRow, minutes: 600);
            Expect(scene, _quayside, minutes: 300);
        });

        var load = (await OpenPageAsync(clinic, _owner, _elmRow, _quayside)).Load;

        // Two chairs and one. The owner keeps no hours and works in both: half of the opening hours in each.
        Assert.Equal([5400.0, 4320, 5400], load[0].ChairMinutes.Take(3));
        Assert.Equal([1350.0 + 240, 1080, 1350], load[0].HandsMinutes.Take(3));
        Assert.Equal([2700.0, 2700, 2700], load[1].ChairMinutes.Take(3));
        Assert.Equal([1350.0, 1350, 1350], load[1].HandsMinutes.Take(3));
        Assert.Equal([8100.0, 7020, 8100], load[2].ChairMinutes.Take(3));
        Assert.Equal([2940.0, 2430, 2700], load[2].HandsMinutes.Take(3));
        Assert.Equal(2, load[2].Clients);
    }

    [Fact]
    public async Task The_first_week_that_does_not_fit_is_found()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            _elmRow.AddClosure(Guid.CreateVersion7(), Today.PlusWeeks(4), Today.PlusWeeks(5).PlusDays(-1), "holidays");
            Expect(scene, _elmRow, minutes: 600);
            Expect(scene, _quayside, minutes: 300);
        });

        var load = (await OpenPageAsync(clinic, _owner, _elmRow, _quayside)).Load;

        Assert.Equal([4, null, null], load.Select(w => w.FirstThatDoesNotFit));
    }

    [Fact]
    public async Task Orders_of_all_workshops_are_the_sum_of_each()
    {
        await using var clinic = await OpenAsync(scene =>
        {
            Order(scene, _kind.WorkshopId, 2.5);
            Order(scene, null, 1.25);
        });

        var orders = await clinic.UseAsync<Slice, IReadOnlyList<WorkshopOrderLoad>>(
            clinic.Acting(_owner, _elmRow, _quayside),
            s => s.ExpectedOrdersAsync(Cancel)
        );

        Assert.Equal(["Workshop North", null, null], orders.Select(o => o.Name));
        Assert.Equal([2.5, 1.25, 3.75], orders.Select(o => Math.Round(o.Load.Month(3).Mean, 9)));
        Assert.True(orders[2].IsSum);
    }

    [Fact]
    public async Task Taking_the_gaps_out_is_a_line_of_the_access_log()
    {
        await using var clinic = await OpenAsync(scene => Wearing(scene, "bare", _elmRow, gapDays: 10));

        var rows = await clinic.UseAsync<Slice, IReadOnlyList<GapRow>>(
            clinic.Acting(_manager, _elmRow),
            s => s.LoadGapsForExportAsync(Cancel)
        );

        Assert.Equal(["bare"], rows.Select(r => r.Code));
        var line = await clinic.ReadAsync(db => db.AccessNotes.SingleAsync(Cancel));
        Assert.Equal((AccessAction.ExportedPractice, "days without hair: 1"), (line.Action, line.Reason));
    }

    [Fact]
    public async Task Before_anything_was_calculated_the_page_opens_without_weeks()
    {
        await using var clinic = await OpenAsync(_ => { });

        var page = await OpenPageAsync(clinic, _owner, _elmRow, _quayside);

        Assert.Empty(page.Load);
        Assert.Empty(page.Orders);
        Assert.Equal(0, page.GapRisks.AllAtRisk);
    }

    private static Task<Slice.Screen> OpenPageAsync(TestClinic clinic, Person who, params Salon[] salons) =>
        clinic.UseAsync<Slice, Slice.Screen>(clinic.Acting(who, salons), s => s.OpenAsync(Cancel));

    private Task<TestClinic> OpenAsync(Action<Scene> lay) =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("North");
                (_elmRow, _quayside) = (
                    scene.OpenSalon("Elm Row", "Europe/London", "GBP", 2),
                    scene.OpenSalon("Quayside", "Europe/London", "GBP", 1)
                );
                _owner = scene.Hire("Ola Test", StaffRole.Owner, _elmRow, _quayside);
                _manager = scene.Hire("Mara Test", StaffRole.Manager, _elmRow);
                _adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "acrylic", "A1");
                _kind = scene.AddUnitKind("Everyday", "Silk top", "Workshop North");
                lay(scene);
            }
        );

    // One unit is worn out and put away sixty days ago; the next is ready so many days later, and worn since.
    private Client Wearing(Scene scene, string code, Salon salon, int gapDays)
    {
        var client = scene.AddClient(code, $"Una {code}", salon);
        var end = Today.PlusDays(-60);
        var first = scene.AddUnit(client, _kind, Today.PlusDays(-200));
        var bond = scene.AddBond(client, first, Today.PlusDays(-100), _adhesive);
        bond.Remove(end, Domain.Bonding.RemovalReason.Scheduled);
        first.TakeOff();
        first.LeaveService(UnitState.Retired, end, "worn out");
        var next = end.PlusDays(gapDays == 0 ? 0 : gapDays + 1);
        scene.AddBond(client, scene.AddUnit(client, _kind, next), next, _adhesive);
        return client;
    }

    private void Plan(Scene scene, Client client, double expected, LocalDate? orderBy = null, int sparesMissing = 0)
    {
        var plan = new ReorderPlan(Guid.CreateVersion7(), client.Id);
        var answer = new ReorderAnswer(orderBy is null ? 0.3 : 0.01, orderBy is null ? null : 9, expected, IsPastSight: false);
        plan.Store(new ReorderOutlook(Today, _kind.Id, 0.05, answer, orderBy) { InHand = 1, SparesMissing = sparesMissing });
        scene.Db.ReorderPlans.Add(plan);
    }

    private static void Expect(Scene scene, Salon salon, double minutes)
    {
        var load = new SalonLoad(52);
        for (var scenario = 0; scenario < PracticeEffectNode.Three.Count; scenario++)
        {
            for (var week = 0; week < load.Weeks; week++)
                load.Add(scenario, week, new WeekLoad(minutes / 60, 0, 0, minutes, minutes / 2, minutes, minutes));
        }
        var forecast = new LoadForecast(Guid.CreateVersion7(), salon.Id);
        forecast.Store(Today, 1, load);
        scene.Db.LoadForecasts.Add(forecast);
    }

    private static void Order(Scene scene, Guid? workshopId, double each)
    {
        var load = new OrderLoad(12);
        for (var scenario = 0; scenario < PracticeEffectNode.Three.Count; scenario++)
        {
            for (var month = 0; month < load.Months; month++)
                load.Add(scenario, month, new CountMoments(each, each));
        }
        var forecast = new OrderForecast(Guid.CreateVersion7(), workshopId);
        forecast.SetLoad(new LocalDate(2027, 2, 1), load);
        scene.Db.OrderForecasts.Add(forecast);
    }
}
