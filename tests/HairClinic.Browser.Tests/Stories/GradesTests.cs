using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;
using NodaTime;

namespace HairClinic.Browser.Tests.Stories;

/// <summary>How a unit looks is written down by whoever looks at it: nothing is filled in, and what is tapped can be taken back.</summary>
public sealed class GradesTests(ChromiumBrowser chromium, DemoSite demo) : IClassFixture<DemoSite>
{
    [Fact]
    public async Task At_a_rebond_grades_are_tapped_cleared_and_copied_with_one_tap()
    {
        var page = await demo.SignInAsync(chromium, "owner");
        var visit = await GradedBeforeAsync(new(1, 0, 3, 1, null, 2));
        await page.OpenAsync($"/visits/{visit}/log-rebond");
        Assert.Equal(0, await page.Locator(".grade input:checked").CountAsync());
        var (knots, fit) = (Grade(page, "Knots", 2), Grade(page, "Fit", 1));

        await knots.ClickAsync();
        await Assertions.Expect(knots).ToBeCheckedAsync();
        await knots.ClickAsync();
        await Assertions.Expect(knots).Not.ToBeCheckedAsync();
        await fit.FocusAsync();
        await page.Keyboard.PressAsync("Space");
        await Assertions.Expect(fit).ToBeCheckedAsync();
        await page.Keyboard.PressAsync("Delete");
        await Assertions.Expect(fit).Not.ToBeCheckedAsync();
        Assert.Equal(0, await page.Locator(".grade input:checked").CountAsync());
        await page.LookAtEveryWidthAsync("grades-blank");

        await page.GetByText("Yes, lifted").ClickAsync();
        await page.GetByRole(AriaRole.Group, new() { NameRegex = new("^Since when has it been up") })
            .GetByText("About a week ago")
            .ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Same as last time" }).ClickAsync();
        await Assertions.Expect(Grade(page, "Base", 3)).ToBeCheckedAsync();
        await page.LookAtEveryWidthAsync("grades-copied");
        await page.GetByText("Waits kept").ClickAsync();
        foreach (var lots in await page.GetByRole(AriaRole.Group, new() { NameRegex = new("Lot of") }).AllAsync())
            await lots.Locator("label.tap:has(input:not(:disabled))").First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the rebond" }).ClickAsync();
        await page.GetByText("Due again").First.WaitForAsync();

        var record = await demo.ReadAsync(db => db.VisitRecords.SingleAsync(r => r.VisitId == visit));
        Assert.Equal((new InspectionGrades(1, 0, 3, 1, null, 2), true), (record.Grades, record.GradesCopied));
        Assert.Equal(SinceWhen.AboutAWeek, record.LiftedSince);
    }

    [Fact]
    public async Task Whoever_retires_a_unit_says_how_it_looks_and_its_card_tells()
    {
        var page = await demo.SignInAsync(chromium, "owner");
        var unit = await UngradedAsync();
        await page.OpenAsync($"/units/{unit}/take-step?step=Retired");
        await page.GetByRole(AriaRole.Radio, new() { Name = "Worn out", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Group, new() { NameRegex = new("^Since when has it looked worn out") })
            .GetByText("2–3 days ago")
            .ClickAsync();
        await Grade(page, "Shedding", 3).ClickAsync();
        await page.GetByLabel("Why").FillAsync("thin at the front");
        await page.LookAtEveryWidthAsync("retire");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await page.ArriveAsync("/units/*/unit-card");
        await page.GetByText("How it looked then").WaitForAsync();
        await page.PictureAsync("retired-card");

        var look = (await demo.ReadAsync(db => db.HairSystems.SingleAsync(u => u.Id == unit))).EndLook!;
        Assert.Equal(
            (UnitCondition.WornOut, InspectionGrades.NotLookedAt with { Shedding = 3 }, SinceWhen.TwoOrThreeDays),
            (look.Condition, look.Grades, look.WornOutSince)
        );
    }

    [Fact]
    public async Task A_lift_told_at_the_desk_says_since_when()
    {
        var page = await demo.SignInAsync(chromium, "owner");
        var bond = await demo.ReadAsync(db =>
            db.Bonds.Where(b => b.RemovedOn == null && b.Lift == null).OrderBy(b => b.AppliedOn).FirstAsync()
        );
        await page.OpenAsync($"/clients/{bond.ClientId}/report-lift");
        await page.LookAtEveryWidthAsync("report-lift");
        await page.GetByText("About a week ago").ClickAsync();
        await page.GetByText("Coming in").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Note the lift" }).ClickAsync();
        await page.GetByText("Lifted between").WaitForAsync();
        await page.NothingForAxeAsync();

        Assert.NotNull((await demo.ReadAsync(db => db.Bonds.SingleAsync(b => b.Id == bond.Id))).Lift!.EarliestOn);
    }

    private static ILocator Grade(IPage page, string item, int grade) => page.Locator($"input[name={item}][value='{grade}']");

    // A unit at rest of which nobody has seen that it is worn out.
    private Task<Guid> UngradedAsync() =>
        demo.ReadAsync(async db =>
        {
            var unit = await db
                .HairSystems.Where(u => u.State == UnitState.Resting || u.State == UnitState.EmergencySpare)
                .Where(u => u.ClientId != null && u.Dates.FirstBondedOn != null)
                .OrderBy(u => u.Serial)
                .Select(u => u.Id)
                .FirstAsync();
            foreach (var record in await db.VisitRecords.Where(r => r.RemovedUnitId == unit).ToListAsync())
                db.Entry(record).ComplexProperty(r => r.Grades).CurrentValue = InspectionGrades.NotLookedAt;
            await db.SaveChangesAsync();
            return unit;
        });

    // A rebond of today whose unit came off before, and was found like this.
    private Task<Guid> GradedBeforeAsync(InspectionGrades found) =>
        demo.ReadAsync(async db =>
        {
            var now = demo.Site.Clock.GetCurrentInstant();
            var rebonds = db.ServiceKinds.Where(s => s.Purpose == ServicePurpose.Rebond).Select(s => s.Id);
            var visit = await db
                .Visits.Where(v => v.State == VisitState.Booked || v.State == VisitState.Arrived || v.State == VisitState.InChair)
                .Where(v => v.StartsAt > now - Duration.FromHours(6) && v.StartsAt < now + Duration.FromHours(10))
                .Where(v => rebonds.Contains(v.ServiceKindId) && !db.VisitRecords.Any(r => r.VisitId == v.Id))
                .OrderBy(v => v.StartsAt)
                .Select(v => new
                {
                    v.Id,
                    Unit = db
                        .Bonds.Where(b => b.ClientId == v.ClientId && b.RemovedOn == null && b.Lift == null)
                        .Select(b => (Guid?)b.HairSystemId)
                        .FirstOrDefault(),
                })
                .FirstAsync(v => v.Unit != null && db.VisitRecords.Any(r => r.RemovedUnitId == v.Unit));
            foreach (var record in await db.VisitRecords.Where(r => r.RemovedUnitId == visit.Unit).ToListAsync())
                db.Entry(record).ComplexProperty(r => r.Grades).CurrentValue = found;
            await db.SaveChangesAsync();
            return visit.Id;
        });
}
