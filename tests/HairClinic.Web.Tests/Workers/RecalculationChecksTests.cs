using HairClinic.Domain.Bonding;
using HairClinic.Domain.Checks;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Learning;
using HairClinic.Web.Workers;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Tests.Workers;

/// <summary>What the night's run leaves out and asks about, and what it learns of preparation.</summary>
public sealed class RecalculationChecksTests(PgServer server)
{
    private static readonly LocalDate Today = new(2027, 2, 3);
    private readonly List<Client> _clients = [];
    private Salon _salon = null!;
    private UnitKind _kind = null!;
    private Product _adhesive = null!;
    private Bond _tenYears = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_bond_of_ten_years_is_left_out_and_asked_about_until_somebody_says_that_it_is_right()
    {
        await using var clinic = await OpenAsync();

        await RunAsync(clinic);

        var fit = await HoldAsync(clinic);
        Assert.Equal((36, 1), (fit.Spells, fit.LeftOut));
        Assert.True(Math.Exp(fit.LogScale!.Value) < 1.5);
        var check = await clinic.ReadAsync(db => db.DateChecks.SingleAsync(Cancel));
        Assert.Equal(
            (DateCheckKind.BondHeld, (Guid?)_tenYears.Id, 3650, Today.PlusDays(-3700), (LocalDate?)Today.PlusDays(-50)),
            (check.Kind, check.BondId, check.Days, check.From, check.Until)
        );
        Assert.InRange(check.UsualTo, 30, 90);

        await clinic.ReadAsync(async db =>
        {
            (await db.DateChecks.SingleAsync(Cancel)).SetAnswer(DateCheckAnswer.Right, null, clinic.Clock.GetCurrentInstant(), Today);
            return await db.SaveChangesAsync(Cancel);
        });
        await RunAsync(clinic);

        fit = await HoldAsync(clinic);
        Assert.Equal((37, 0), (fit.Spells, fit.LeftOut));
        Assert.True(Math.Exp(fit.LogScale!.Value) > 2);
        Assert.Equal(1, await clinic.ReadAsync(db => db.DateChecks.CountAsync(Cancel)));
    }

    [Fact]
    public async Task Where_its_dates_change_it_is_not_asked_any_more()
    {
        await using var clinic = await OpenAsync();
        await RunAsync(clinic);
        await clinic.ReadAsync(db =>
            db.Bonds.Where(b => b.Id == _tenYears.Id).ExecuteUpdateAsync(b => b.SetProperty(x => x.AppliedOn, Today.PlusDays(-90)), Cancel)
        );

        await RunAsync(clinic);

        Assert.Equal(0, await clinic.ReadAsync(db => db.DateChecks.CountAsync(Cancel)));
        Assert.Equal((37, 0), ((await HoldAsync(clinic)).Spells, (await HoldAsync(clinic)).LeftOut));
    }

    [Fact]
    public async Task The_second_run_judges_by_the_first_and_says_the_same()
    {
        await using var clinic = await OpenAsync();
        await RunAsync(clinic);
        var first = await HoldAsync(clinic);

        await RunAsync(clinic);

        var second = await HoldAsync(clinic);
        Assert.Equal((first.Spells, first.LeftOut), (second.Spells, second.LeftOut));
        Assert.Equal(first.LogPosterior!.Value, second.LogPosterior!.Value, 1e-9);
        Assert.Equal(1, await clinic.ReadAsync(db => db.DateChecks.CountAsync(Cancel)));
    }

    // Twelve first units came and were bonded twenty days later, one of them beside an older one that still wore, as by the spares' it says nothing.
    [Fact]
    public async Task Days_from_arrival_to_the_first_bond_are_learnt_from_units_somebody_waited_for()
    {
        await using var clinic = await OpenAsync();
        var before = await clinic.ReadAsync(db => ReorderFacts.LoadAsync(db, Cancel));
        Assert.Equal((false, 14), (before.Preparation.IsLearnt, before.Preparation.HalfDays));

        await RunAsync(clinic);

        var stored = await clinic.ReadAsync(db => db.StoredPreparations.SingleAsync(Cancel));
        Assert.Equal(Enumerable.Repeat(20.0, 11), stored.Taken);
        Assert.Empty(stored.Waited);
        var after = await clinic.ReadAsync(db => ReorderFacts.LoadAsync(db, Cancel));
        Assert.Equal((true, 11), (after.Preparation.IsLearnt, after.Preparation.Units));
        Assert.InRange(after.Preparation.HalfDays, 17, 20);
    }

    // Twelve clients with three bonds each, one of them lifted; in an old book one more is written down for ten years.
    private async Task<TestClinic> OpenAsync() =>
        await TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("North");
                _salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 2);
                _adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "acrylic", "A1");
                _kind = scene.AddUnitKind("Everyday", "Silk top", "Workshop North");
                for (var i = 0; i < 12; i++)
                    _clients.Add(Wearing(scene, scene.AddClient($"c-{i}", $"Una Test {i}", _salon)));
                var old = new HairSystem(Guid.CreateVersion7(), "OLD-1", _clients[0].Id, _kind.Id, null);
                old.ImportState(
                    UnitState.Lost,
                    new UnitDates { FirstBondedOn = Today.PlusDays(-3700), RetiredOn = Today.PlusDays(-50) },
                    "lost"
                );
                scene.Db.HairSystems.Add(old);
                _tenYears = new Bond(
                    Guid.CreateVersion7(),
                    old.Id,
                    _clients[0].Id,
                    Today.PlusDays(-3700),
                    null,
                    Attachment.Liquid,
                    appliedBy: null
                );
                _tenYears.SetDueWindow(scene.DueCalculatorFor(_clients[0], old, _adhesive).WindowFor(Today.PlusDays(-3700)));
                _tenYears.Remove(Today.PlusDays(-50), RemovalReason.Scheduled);
                scene.Db.Bonds.Add(_tenYears);
            }
        );

    private Client Wearing(Scene scene, Client client)
    {
        var unit = scene.AddUnit(client, _kind, Today.PlusDays(-165));
        scene.AddUnit(client, _kind, Today.PlusDays(-20));
        foreach (var (days, off, lifted) in new[] { (145, 107, true), (104, 70, false), (66, 10, false) })
        {
            var bond = scene.AddBond(client, unit, Today.PlusDays(-days), _adhesive);
            if (days == 66)
                continue;
            var on = Today.PlusDays(-off);
            if (lifted)
                bond.ReportLift(new Lift(on, on, LiftZone.Front, SpotFixed: false));
            bond.Remove(on, lifted ? RemovalReason.Lifted : RemovalReason.Scheduled);
            unit.TakeOff();
        }
        return client;
    }

    private static Task<StoredFit> HoldAsync(TestClinic clinic) =>
        clinic.ReadAsync(db =>
            db.StoredFits.Where(f => f.Quantity == LifetimeKind.Hold).OrderByDescending(f => f.FittedAt).FirstAsync(Cancel)
        );

    private static async Task RunAsync(TestClinic clinic)
    {
        clinic.Clock.AdvanceSeconds(1);
        await clinic.ReadAsync(db => RecalculationQueue.RequestAsync(db, null, clinic.Clock.GetCurrentInstant(), Cancel));
        await clinic.UseAsync<RecalculationRunner, bool>(clinic.Job, r => r.RunAsync(Cancel));
    }
}
