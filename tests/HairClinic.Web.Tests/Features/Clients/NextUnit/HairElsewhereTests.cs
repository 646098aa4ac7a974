using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Replacement;
using HairClinic.Domain.Shelf;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Learning;
using NodaTime;
using Slice = HairClinic.Web.Features.Clients.NextUnit;

namespace HairClinic.Web.Tests.Features.Clients.NextUnit;

/// <summary>
/// Hair that is not here is no hair: the plan is that of the same client without the unit. What is lent to them is hair until it is due
/// back: the plan is that of the same client with as many days of hair more.
/// </summary>
public sealed class HairElsewhereTests(PgServer server)
{
    private static readonly LocalDate Today = new(2027, 2, 3);
    private Client _client = null!;
    private Client _other = null!;
    private Person _desk = null!;
    private Salon _salon = null!;
    private UnitKind _kind = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public enum Spare
    {
        InHouse,
        Away,
        Retired,
        LentElsewhere,
        BorrowedUntilToday,
    }

    [Theory]
    [InlineData(Spare.Away)]
    [InlineData(Spare.Retired)]
    [InlineData(Spare.LentElsewhere)]
    [InlineData(Spare.BorrowedUntilToday)]
    public async Task A_spare_that_is_not_here_leaves_the_plan_as_if_there_were_none(Spare spare)
    {
        var without = await PlanAsync(_ => { });
        var with = await PlanAsync(scene => Lay(scene, spare));
        var inHouse = await PlanAsync(scene => Lay(scene, Spare.InHouse));

        Assert.True(without.Outlook.GapIfOrderedToday > 0.01);
        Assert.Equal(without.Outlook.GapIfOrderedToday, with.Outlook.GapIfOrderedToday, 12);
        Assert.Equal(without.Outlook.ExpectedDaysWithoutHair, with.Outlook.ExpectedDaysWithoutHair, 9);
        Assert.Equal(without.Outlook.OrderBy, with.Outlook.OrderBy);
        // The same spare in the drawer would make a difference.
        Assert.True(inHouse.Outlook.GapIfOrderedToday < without.Outlook.GapIfOrderedToday / 2);
    }

    [Theory]
    [InlineData(20)]
    [InlineData(60)]
    public async Task What_is_lent_to_them_is_hair_for_the_days_until_it_is_due_back(int days)
    {
        var without = await PlanAsync(_ => { });
        var expected = without.OutlookWith(new ReorderScenario(RepairDays: days), new ReorderRule(LeadTimeForecasts.DaysInSight));

        var with = await PlanAsync(scene => Lend(scene, _client, Today.PlusDays(days)));

        Assert.Equal(expected.GapIfOrderedToday, with.Outlook.GapIfOrderedToday, 12);
        Assert.True(with.Outlook.GapIfOrderedToday < without.Outlook.GapIfOrderedToday);
    }

    private void Lay(Scene scene, Spare spare)
    {
        switch (spare)
        {
            case Spare.InHouse:
                scene.AddUnit(_client, _kind, Today.PlusDays(-40));
                break;
            case Spare.Away:
                scene
                    .AddUnit(_client, _kind, Today.PlusDays(-40))
                    .SendForRepair(Today.PlusDays(-9), new RepairTrip(RepairKind.Rim, null, Today.PlusDays(9), null), Entry());
                break;
            case Spare.Retired:
                scene
                    .AddUnit(_client, _kind, Today.PlusDays(-40))
                    .LeaveService(UnitState.Retired, Today.PlusDays(-9), "thin at the front", Entry());
                break;
            case Spare.LentElsewhere:
                Lend(scene, _other, Today.PlusDays(60));
                break;
            default:
                Lend(scene, _client, Today);
                break;
        }
    }

    private void Lend(Scene scene, Client to, LocalDate dueBack)
    {
        var lentOn = Today.PlusDays(-5);
        var unit = HairSystem.AddToBook(
            Guid.CreateVersion7(),
            "N-1",
            null,
            _kind.Id,
            UnitOrigin.ReadyMade,
            Today,
            Today.PlusDays(-40),
            _salon.Id
        );
        unit.LendOut(lentOn, Entry());
        scene.Db.HairSystems.Add(unit);
        scene.Db.UnitLoans.Add(new UnitLoan(Guid.CreateVersion7(), unit.Id, to.Id, lentOn, dueBack));
    }

    private static UnitStepEntry Entry() => new(Guid.CreateVersion7(), Today, TestClinic.UsualNow, By: null);

    private async Task<Slice.Tried> PlanAsync(Action<Scene> lay)
    {
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("North");
                _salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 1);
                _desk = scene.Hire("Desk", StaffRole.FrontDesk, _salon);
                var adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "acrylic", "A1");
                _kind = scene.AddUnitKind("Everyday", "Silk top", "Workshop North");
                (_client, _other) = (scene.AddClient("c-1", "Una Test", _salon), scene.AddClient("c-2", "Ben Test", _salon));
                scene.AddBond(_client, scene.AddUnit(_client, _kind, Today.PlusDays(-161)), Today.PlusDays(-160), adhesive);
                lay(scene);
            }
        );
        var desk = clinic.Acting(_desk, _salon);
        return (await clinic.UseAsync<Slice, Slice.Tried?>(desk, s => s.LoadWhatIfBaselineAsync(_client.Id, Cancel)))!;
    }
}
