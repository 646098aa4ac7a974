using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Wear;
using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Web.Data;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Learning;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Tests.Learning;

/// <summary>A window of 4 to 8 weeks aims at day 32 for a client of whom nothing is known.</summary>
public sealed class OwnTargetTests(PgServer server)
{
    private static readonly LocalDate First = new(2026, 9, 1);
    private Client _client = null!;
    private UnitKind _kind = null!;
    private Product _adhesive = null!;

    [Fact]
    public async Task With_no_bonds_of_their_own_the_date_is_the_windows_to_the_day()
    {
        await using var clinic = await OpenAsync(lifted: false, bonds: 0);

        var (days, reason) = await TargetAsync(clinic);

        Assert.Equal(32, days);
        Assert.Equal(DueRuleName.TargetFromPrior, reason.Rule);
    }

    [Fact]
    public async Task Three_lifts_on_day_35_move_the_target_earlier_and_the_reason_says_so()
    {
        await using var clinic = await OpenAsync(lifted: true, bonds: 3);

        var (days, reason) = await TargetAsync(clinic);

        Assert.InRange(days, 25, 31);
        Assert.Equal((DueRuleName.TargetFromOwnBonds, days, 3), (reason.Rule, reason.Amount, reason.UpTo));
        Assert.Equal(32 - days, Period.DaysBetween(reason.To, reason.From));
    }

    [Fact]
    public async Task Three_bonds_still_sound_on_day_35_move_it_later()
    {
        await using var clinic = await OpenAsync(lifted: false, bonds: 3);

        var (days, reason) = await TargetAsync(clinic);

        Assert.InRange(days, 33, 45);
        Assert.Equal((DueRuleName.TargetFromOwnBonds, days, 3), (reason.Rule, reason.Amount, reason.UpTo));
    }

    [Fact]
    public async Task Habits_alone_move_it_by_the_practices_factors()
    {
        await using var clinic = await OpenAsync(lifted: false, bonds: 0);
        await clinic.ReadAsync(db =>
        {
            db.CareFacts.Add(new(Guid.CreateVersion7(), _client.Id, First, new() { Sweat = Sweating.Heavy }));
            return db.SaveChangesAsync(TestContext.Current.CancellationToken);
        });

        var (days, reason) = await TargetAsync(clinic);

        Assert.InRange(days, 14, 31);
        Assert.Equal(DueRuleName.TargetFromPractice, reason.Rule);
    }

    [Fact]
    public async Task What_is_found_on_the_bond_that_comes_off_counts_for_the_next_already()
    {
        await using var clinic = await OpenAsync(lifted: false, bonds: 3);

        var (sound, lifted) = await clinic.ReadAsync(async db =>
        {
            var worn = await db.Bonds.OrderBy(b => b.AppliedOn).LastAsync(TestContext.Current.CancellationToken);
            return (await TargetAsync(db), await TargetAsync(db, (worn.Id, new(HoldCensoring.Exact, 20, 20))));
        });

        Assert.True(lifted.Days < sound.Days);
    }

    [Fact]
    public async Task A_recalculation_of_an_empty_book_does_not_make_a_clients_own_bonds_count_for_nothing()
    {
        await using var clinic = await OpenAsync(lifted: true, bonds: 3);
        var before = await TargetAsync(clinic);
        await clinic.ReadAsync(db =>
        {
            var now = clinic.Clock.GetCurrentInstant();
            db.StoredFits.Add(WearModelFitter.FitHolds([], new Dictionary<KnownCovariate, double>(), First, now));
            return db.SaveChangesAsync(TestContext.Current.CancellationToken);
        });

        var (days, reason) = await TargetAsync(clinic);

        Assert.Equal((before.Days, DueRuleName.TargetFromOwnBonds), (days, reason.Rule));
    }

    private async Task<TestClinic> OpenAsync(bool lifted, int bonds) =>
        await TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("North");
                var salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 1);
                scene.HoldWindows[0].Edit(null, null, null, 4, 8);
                _adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "acrylic", "A1");
                _kind = scene.AddUnitKind("Everyday", "Silk top", "Workshop North");
                _client = scene.AddClient("c-1", "Una Test", salon);
                var unit = scene.AddUnit(_client, _kind, First.PlusDays(-1));
                for (var i = 0; i < bonds; i++)
                    Bonded(scene, unit, First.PlusDays(35 * i), lifted);
            }
        );

    private void Bonded(Scene scene, HairSystem unit, LocalDate on, bool lifted)
    {
        var bond = scene.AddBond(_client, unit, on, _adhesive);
        var off = on.PlusDays(35);
        if (lifted)
            bond.ReportLift(new Lift(off, off, null, SpotFixed: false));
        bond.Remove(off, lifted ? RemovalReason.Lifted : RemovalReason.Scheduled);
        unit.TakeOff();
    }

    private Task<(int Days, DueReason Reason)> TargetAsync(TestClinic clinic) => clinic.ReadAsync(db => TargetAsync(db));

    private async Task<(int Days, DueReason Reason)> TargetAsync(ClinicDb db, (Guid, HoldObservation)? off = null)
    {
        var cancel = TestContext.Current.CancellationToken;
        var day = First.PlusDays(105);
        var dues = await DueFacts.LoadAsync(db, cancel);
        var holds = await HoldFacts.LoadAsync(db, dues.Windows, [_client.Id], cancel);
        var someone = await db.Clients.Include(c => c.Events).SingleAsync(c => c.Id == _client.Id, cancel);
        var window = dues.CalculatorFor(someone, _kind.BaseMaterialId, _adhesive.Id, Attachment.Liquid, holds: holds, off: off)
            .WindowFor(day);
        return (Period.DaysBetween(day, window.Target), window.Why.Explain()[1]);
    }
}
