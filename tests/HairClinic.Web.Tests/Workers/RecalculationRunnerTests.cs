using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.LoadAhead;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Learning;
using HairClinic.Web.Workers;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Tests.Workers;

public sealed class RecalculationRunnerTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static readonly LocalDate Today = new(2027, 2, 3);
    private readonly List<Client> _clients = [];
    private UnitKind _kind = null!;
    private Product _adhesive = null!;

    [Fact]
    public async Task A_run_stores_fits_plans_and_the_weeks_ahead()
    {
        await using var clinic = await OpenAsync(clients: 12);

        var run = await RunAsync(clinic);

        Assert.Equal((RecalculationState.Done, RecalculationStage.Storing, 12), (run.State, run.Stage, run.Done));
        var fits = await clinic.ReadAsync(db => db.StoredFits.ToListAsync(Cancel));
        var hold = fits.Single(f => f.Quantity == LifetimeKind.Hold);
        Assert.True(hold.Converged);
        Assert.Equal((36, 12, 12, Today), (hold.Spells, hold.Ended, hold.Clients, hold.DataCut));
        Assert.Equal(12, await clinic.ReadAsync(db => db.ReorderPlans.CountAsync(Cancel)));
        var load = await clinic.ReadAsync(db => db.LoadForecasts.SingleAsync(Cancel));
        Assert.Equal((12, Today), (load.Clients, load.From));
        // Twelve clients with a window of four to six weeks come some nine to thirteen times a year each.
        var sum = load.ToSalonLoad();
        Assert.InRange(Enumerable.Range(0, sum.Weeks).Sum(w => sum.Week(w).Rebonds), 12 * 8, 12 * 14);
        var orders = await clinic.ReadAsync(db => db.OrderForecasts.SingleAsync(Cancel));
        Assert.Equal(_kind.WorkshopId, orders.WorkshopId);
        Assert.True(Enumerable.Range(0, 12).Sum(m => orders.ToOrderLoad().Month(m).Mean) >= 12);
    }

    [Fact]
    public async Task A_second_run_replaces_plans_and_forecasts_and_keeps_the_older_fits()
    {
        await using var clinic = await OpenAsync(clients: 3);
        await RunAsync(clinic);

        await RunAsync(clinic);

        Assert.Equal(3, await clinic.ReadAsync(db => db.ReorderPlans.CountAsync(Cancel)));
        Assert.Equal(1, await clinic.ReadAsync(db => db.LoadForecasts.CountAsync(Cancel)));
        Assert.Equal(4, await clinic.ReadAsync(db => db.StoredFits.CountAsync(Cancel)));
    }

    [Fact]
    public async Task A_run_that_is_asked_to_stop_stops_and_says_so()
    {
        await using var clinic = await OpenAsync(clients: 3);
        await AskAsync(clinic);
        await clinic.ReadAsync(async db =>
        {
            (await db.Recalculations.SingleAsync(Cancel)).AskToStop();
            return await db.SaveChangesAsync(Cancel);
        });

        await clinic.UseAsync<RecalculationRunner, bool>(clinic.Job, r => r.RunAsync(Cancel));

        Assert.Equal(RecalculationState.Stopped, await clinic.ReadAsync(db => db.Recalculations.Select(r => r.State).SingleAsync(Cancel)));
        Assert.Equal(0, await clinic.ReadAsync(db => db.ReorderPlans.CountAsync(Cancel)));
    }

    [Fact]
    public async Task Asked_twice_there_is_one_run()
    {
        await using var clinic = await OpenAsync(clients: 0);

        var ids = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => AskAsync(clinic)));

        Assert.Single(ids.Distinct());
        Assert.Equal(1, await clinic.ReadAsync(db => db.Recalculations.CountAsync(Cancel)));
    }

    [Fact]
    public async Task Of_two_programs_only_one_carries_it_out()
    {
        await using var clinic = await OpenAsync(clients: 3);
        await AskAsync(clinic);

        await Task.WhenAll(
            Enumerable.Range(0, 4).Select(_ => clinic.UseAsync<RecalculationRunner, bool>(clinic.Job, r => r.RunAsync(Cancel)))
        );

        Assert.Equal(2, await clinic.ReadAsync(db => db.StoredFits.CountAsync(Cancel)));
    }

    [Fact]
    public async Task Plans_asked_for_at_the_same_moment_are_made_one_after_another()
    {
        await using var clinic = await OpenAsync(clients: 12);

        await Task.WhenAll(
            Enumerable
                .Range(0, 8)
                .Select(_ =>
                    clinic.ReadAsync(async db =>
                    {
                        var book = await ReorderFacts.LoadAsync(db, Cancel);
                        var planned = _clients.Select(c => c.Id).ToList();
                        return await ReorderPlanStore.RecalculateAsync(db, book, planned, clinic.Clock.GetCurrentInstant(), Cancel);
                    })
                )
        );

        Assert.Equal(12, await clinic.ReadAsync(db => db.ReorderPlans.CountAsync(Cancel)));
    }

    [Fact]
    public async Task At_night_one_is_asked_for_and_by_day_none_again()
    {
        await using var clinic = await OpenAsync(clients: 0);
        await NightlyAsync(clinic);
        await clinic.UseAsync<RecalculationRunner, bool>(clinic.Job, r => r.RunAsync(Cancel));
        await NightlyAsync(clinic);
        Assert.Equal(1, await clinic.ReadAsync(db => db.Recalculations.CountAsync(Cancel)));

        clinic.Clock.AdvanceHours(16);
        await NightlyAsync(clinic);

        Assert.Equal(2, await clinic.ReadAsync(db => db.Recalculations.CountAsync(Cancel)));
    }

    [Fact]
    public async Task A_nightly_run_that_failed_is_asked_for_again_the_same_night()
    {
        await using var clinic = await OpenAsync(clients: 0);
        await NightlyAsync(clinic);
        await clinic.ReadAsync(async db =>
        {
            (await db.Recalculations.SingleAsync(Cancel)).Finish(
                RecalculationState.Failed,
                clinic.Clock.GetCurrentInstant(),
                "OutOfMemoryException"
            );
            return await db.SaveChangesAsync(Cancel);
        });

        await NightlyAsync(clinic);
        Assert.Equal(1, await clinic.ReadAsync(db => db.Recalculations.CountAsync(Cancel)));
        clinic.Clock.AdvanceMinutes(10);
        await NightlyAsync(clinic);
        Assert.Equal(2, await clinic.ReadAsync(db => db.Recalculations.CountAsync(Cancel)));

        await clinic.UseAsync<RecalculationRunner, bool>(clinic.Job, r => r.RunAsync(Cancel));
        clinic.Clock.AdvanceHours(2);
        await NightlyAsync(clinic);
        Assert.Equal(2, await clinic.ReadAsync(db => db.Recalculations.CountAsync(Cancel)));
    }

    [Fact]
    public async Task A_unit_that_changes_asks_for_its_clients_plan_in_the_same_save()
    {
        await using var clinic = await OpenAsync(clients: 2);
        await RunAsync(clinic);
        var before = await PlanAsync(clinic);

        await clinic.ReadAsync(async db =>
        {
            var unit = await db.HairSystems.SingleAsync(u => u.ClientId == _clients[0].Id && u.State == UnitState.Accepted, Cancel);
            unit.LeaveService(UnitState.Lost, Today, "left on a train");
            return await db.SaveChangesAsync(Cancel);
        });
        await clinic.UseAsync<PracticeWorkRunner, int>(clinic.Job, w => w.RunAllDueAsync(Cancel));

        var after = await PlanAsync(clinic);
        Assert.Equal((2, 1), (before.InHand, after.InHand));
        Assert.True(after.GapIfOrderedToday > before.GapIfOrderedToday);
    }

    [Fact]
    public async Task Plans_asked_for_one_by_one_are_made_in_one_pass_and_one_that_cannot_be_made_takes_none_down()
    {
        await using var clinic = await OpenAsync(clients: 12);
        var now = clinic.Clock.GetCurrentInstant();
        await clinic.ReadAsync(async db =>
        {
            await db.WorkItems.ExecuteDeleteAsync(Cancel);
            db.WorkItems.Add(new WorkItem(Guid.CreateVersion7(), WorkKind.PlanOrders, "{}", now));
            db.WorkItems.AddRange(_clients.Select(c => WorkItemFactory.PlanOrders([c.Id], now)));
            return await db.SaveChangesAsync(Cancel);
        });
        clinic.Commands.Clear();

        await clinic.UseAsync<PracticeWorkRunner, int>(clinic.Job, w => w.RunNextAsync(WorkConcurrencyGroup.Plans, Cancel));
        Assert.Equal(0, await clinic.ReadAsync(db => db.ReorderPlans.CountAsync(Cancel)));
        // All failed with it. From now on they are tried one by one.
        clinic.Clock.AdvanceSeconds(11);
        await clinic.UseAsync<PracticeWorkRunner, int>(clinic.Job, w => w.RunAllDueAsync(Cancel));

        Assert.Equal(12, await clinic.ReadAsync(db => db.ReorderPlans.CountAsync(Cancel)));
        Assert.Equal(1, await clinic.ReadAsync(db => db.WorkItems.CountAsync(w => w.DoneAt == null, Cancel)));

        await clinic.ReadAsync(async db =>
        {
            db.WorkItems.AddRange(_clients.Select(c => WorkItemFactory.PlanOrders([c.Id], now)));
            return await db.SaveChangesAsync(Cancel);
        });
        Assert.Equal(
            12,
            await clinic.UseAsync<PracticeWorkRunner, int>(clinic.Job, w => w.RunNextAsync(WorkConcurrencyGroup.Plans, Cancel))
        );
    }

    [Fact]
    public async Task A_plan_waits_for_its_turn_as_long_as_it_takes()
    {
        await using var clinic = await OpenAsync(clients: 1);
        await using var busy = new Npgsql.NpgsqlConnection(server.Administrator.Replace("Database=postgres", "Database=hairclinic"));
        await busy.OpenAsync(Cancel);
        await using var turn = await busy.BeginTransactionAsync(Cancel);
        await using var hold = new Npgsql.NpgsqlCommand(
            $"select pg_advisory_xact_lock(hashtextextended('plans {clinic.PracticeId}', 0))",
            busy
        );
        await hold.ExecuteNonQueryAsync(Cancel);

        var planning = clinic.ReadAsync(async db =>
        {
            // What every statement is given, instead of half a minute.
            db.Database.SetCommandTimeout(1);
            var book = await ReorderFacts.LoadAsync(db, Cancel);
            return await ReorderPlanStore.RecalculateAsync(db, book, [_clients[0].Id], clinic.Clock.GetCurrentInstant(), Cancel);
        });
        await Task.Delay(TimeSpan.FromSeconds(3), Cancel);
        Assert.False(planning.IsCompleted);
        await turn.RollbackAsync(Cancel);

        Assert.Single(await planning);
    }

    [Fact]
    public async Task A_unit_on_its_way_made_again_tells_of_the_remake_and_not_of_how_long_an_order_takes()
    {
        await using var clinic = await OpenAsync(clients: 1);
        await clinic.ReadAsync(async db =>
        {
            var unit = new HairSystem(Guid.CreateVersion7(), "R-1", _clients[0].Id, _kind.Id, Today.PlusDays(-120));
            unit.Order(Today.PlusDays(-120));
            unit.Arrive(Today.PlusDays(-50), _clients[0].HomeSalonId);
            unit.Inspect(Today.PlusDays(-50));
            unit.SendBackForRemake(Guid.CreateVersion7(), Today.PlusDays(-50), Today.PlusDays(6));
            unit.Ship(Today.PlusDays(-3));
            db.HairSystems.Add(unit);
            return await db.SaveChangesAsync(Cancel);
        });

        await RunAsync(clinic);

        var lead = await clinic.ReadAsync(db => db.StoredLeads.SingleAsync(Cancel));
        Assert.Empty(lead.Waited);
        // The client's two units in house arrived once, ten weeks after their order.
        Assert.Equal([70, 70], lead.Arrived);
        Assert.Equal((1, 2), (lead.Remade, lead.Kept));
    }

    [Fact]
    public async Task Whoever_left_is_planned_for_no_more()
    {
        await using var clinic = await OpenAsync(clients: 2);
        await RunAsync(clinic);
        await clinic.ReadAsync(async db =>
        {
            (await db.Clients.SingleAsync(c => c.Id == _clients[0].Id, Cancel)).Leave(Today);
            return await db.SaveChangesAsync(Cancel);
        });

        await RunAsync(clinic);

        Assert.Equal([_clients[1].Id], await clinic.ReadAsync(db => db.ReorderPlans.Select(p => p.ClientId).ToListAsync(Cancel)));
    }

    private Task<Domain.Replacement.ReorderPlan> PlanAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => db.ReorderPlans.SingleAsync(p => p.ClientId == _clients[0].Id, Cancel));

    private static Task<Guid> AskAsync(TestClinic clinic) =>
        clinic.ReadAsync(db => RecalculationQueue.RequestAsync(db, null, clinic.Clock.GetCurrentInstant(), Cancel));

    private static Task<bool> NightlyAsync(TestClinic clinic) =>
        clinic.ReadAsync(async db =>
        {
            await RecalculationQueue.RequestNightlyIfDueAsync(db, clinic.Clock.GetCurrentInstant(), Cancel);
            return true;
        });

    private static async Task<Recalculation> RunAsync(TestClinic clinic)
    {
        clinic.Clock.AdvanceSeconds(1);
        await AskAsync(clinic);
        await clinic.UseAsync<RecalculationRunner, bool>(clinic.Job, r => r.RunAsync(Cancel));
        return await clinic.ReadAsync(db => db.Recalculations.OrderByDescending(r => r.AskedAt).FirstAsync(Cancel));
    }

    private async Task<TestClinic> OpenAsync(int clients) =>
        await TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("North");
                var salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 2);
                _adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "acrylic", "A1");
                _kind = scene.AddUnitKind("Everyday", "Silk top", "Workshop North");
                for (var i = 0; i < clients; i++)
                    _clients.Add(Wearing(scene, scene.AddClient($"c-{i}", $"Una Test {i}", salon)));
            }
        );

    // Two bonds came off, one of them lifted; a third is on the head since ten days, and there is a spare.
    private Client Wearing(Scene scene, Client client)
    {
        var unit = scene.AddUnit(client, _kind, Today.PlusDays(-100));
        scene.AddUnit(client, _kind, Today.PlusDays(-20));
        foreach (var (days, lifted) in new[] { (80, true), (45, false), (10, false) })
        {
            var bond = scene.AddBond(client, unit, Today.PlusDays(-days), _adhesive);
            if (days == 10)
                break;
            var off = Today.PlusDays(-days + 35);
            if (lifted)
                bond.ReportLift(new Lift(off, off, null, SpotFixed: false));
            bond.Remove(off, lifted ? RemovalReason.Lifted : RemovalReason.Scheduled);
            unit.TakeOff();
        }
        return client;
    }
}
