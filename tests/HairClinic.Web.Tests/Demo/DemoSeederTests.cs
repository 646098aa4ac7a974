using HairClinic.Domain.Bonding;
using HairClinic.Web.Demo;
using HairClinic.Web.Demo.Scenes;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Tests.Demo;

public sealed class DemoSeederTests(PgServer server)
{
    [Fact]
    public async Task A_database_that_holds_a_practice_is_left_alone()
    {
        await using var clinic = await TestClinic.OpenAsync(server, scene => scene.AddPractice("Somebody's own"));

        var filled = await clinic.UseAsync<DemoSeeder, DemoSeeder.Filled?>(
            clinic.Job,
            demo => demo.FillAsync(TestContext.Current.CancellationToken)
        );

        Assert.Null(filled);
    }

    [Fact]
    public async Task Every_tour_has_its_scene()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);

        var codes = await clinic.ReadAsync(db => db.Clients.Select(c => c.Code).ToListAsync(TestContext.Current.CancellationToken));
        var lifted = await clinic.ReadAsync(db =>
            db.Bonds.SingleAsync(b => b.Lift != null && !b.Lift.SpotFixed, TestContext.Current.CancellationToken)
        );

        Assert.Subset(codes.ToHashSet(), TourScenes.All.Select(t => t.ClientCode).ToHashSet());
        Assert.Equal((true, LiftZone.Temples), (lifted.IsOpen, lifted.Lift!.Zone));
    }

    [Fact]
    public async Task Before_a_wedding_the_rebond_is_pulled_ahead_of_it()
    {
        await using var clinic = await TestClinic.OpenAsync(server, Lay);
        var wedding = new LocalDate(2027, 2, 3).PlusDays(21);

        var due = await clinic.ReadAsync(db =>
            db.Bonds.Where(b => db.Clients.Any(c => c.Id == b.ClientId && c.Code == "T-02"))
                .Select(b => b.DueOn)
                .SingleAsync(TestContext.Current.CancellationToken)
        );

        Assert.True(due <= wedding.PlusDays(-5));
    }

    [Fact]
    public async Task The_demos_day_is_played_up_to_this_moment()
    {
        var now = new LocalDate(2027, 2, 3).At(new LocalTime(15, 0)).InUtc().ToInstant();
        await using var clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("A practice with an old book");
                foreach (var salon in DemoPractice.Salons)
                    scene.OpenSalon(salon.Name, salon.Zone, salon.Currency, chairs: 0);
            },
            now
        );
        await Features.Binder.Binders.BringAllAsync(clinic, DemoBinder.GenerateCsv(new LocalDate(2027, 2, 3)));

        await clinic.ReadAsync(async db =>
        {
            await new DemoDaySimulator(db, DemoHistory.Generate(new LocalDate(2027, 2, 3)), now).PlayAsync(
                TestContext.Current.CancellationToken
            );
            return true;
        });

        var fresh = await clinic.ReadAsync(db => db.Bonds.Where(b => b.VisitId != null).ToListAsync(TestContext.Current.CancellationToken));
        Assert.NotEmpty(fresh);
        Assert.All(fresh, bond => Assert.True(bond.IsOpen && bond.AppliedAt <= now && now - bond.AppliedAt < Duration.FromHours(24)));
        var late = await clinic.ReadAsync(db =>
            db.Visits.CountAsync(
                v => v.StartsAt <= now && v.Day == new LocalDate(2027, 2, 3) && v.State == Domain.Visits.VisitState.Booked,
                TestContext.Current.CancellationToken
            )
        );
        Assert.Equal(0, late);
    }

    [Fact]
    public void The_shown_password_is_one_the_program_takes()
    {
        Assert.True(DemoAccounts.Password.Length >= 15);
        Assert.Equal(DemoPractice.People.Count, DemoAccounts.All.Select(s => s.Name).Distinct().Count());
    }

    private static void Lay(Scene scene)
    {
        scene.AddPractice("A practice with tours");
        var salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 2);
        var desk = scene.Hire("Petra Quillon", Domain.Practices.StaffRole.FrontDesk, salon);
        foreach (var product in DemoPractice.Products)
            scene.AddProduct(product.Name, product.Kind, product.Chemistry, "L1");
        foreach (var kind in DemoPractice.Kinds)
            scene.AddUnitKind(kind.Name, kind.Base, kind.Workshop);
        TourScenes.AddAll(scene, salon, desk);
    }
}
