using System.Diagnostics;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Demo.Truth;
using HairClinic.Web.Features.Binder;
using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Demo;

/// <summary>Fills an empty database with the invented practice: its rooms are laid, its binder is imported like anybody's.</summary>
public sealed class DemoSeeder(PracticeJobRunner jobs, IClock clock)
{
    /// <summary>Quarters of a year for which lots are on the shelf's record.</summary>
    private const int Quarters = 9;

    /// <summary>In this practice a unit is looked at, coloured and cut in within the week it arrives.</summary>
    private const int PreparationDays = 5;

    private const int RebondPence = 85_00;

    /// <returns>What was filled in; null when the database holds a practice already, which is left alone.</returns>
    public async Task<Filled?> FillAsync(CancellationToken cancellation)
    {
        if ((await jobs.PracticeIdsAsync(cancellation)).Count > 0)
            return null;
        var watch = Stopwatch.StartNew();
        var practiceId = Guid.CreateVersion7();
        var now = clock.GetCurrentInstant();
        var today = now.InZone(DateTimeZoneProviders.Tzdb[DemoPractice.Lane.Zone]).Date;
        var outcomes = await jobs.RunJobAsync(
            practiceId,
            "demo",
            async services =>
            {
                var databases = services.GetRequiredService<ClinicDbFactory>();
                await LayAsync(databases, practiceId, now, today, cancellation);
                var history = DemoHistory.Generate(today, declining: true);
                var drafts = DemoBinder.GenerateCsv(history).Select(file => Draft(file.Key, file.Value)).ToList();
                var brought = await services.GetRequiredService<ImportBinder>().SaveAsync(drafts, createMissing: false, cancellation);
                await using var db = databases.Open();
                await new DemoTakeDownsAndRemakes(db).WriteAsync(history, cancellation);
                await new DemoDaySimulator(db, history, now).PlayAsync(cancellation);
                await services.GetRequiredService<DemoConfidentialData>().AddAsync(db, now, today, cancellation);
                await Scene.ConfirmAddressesAsync(db, now, but: []);
                await services.GetRequiredService<DemoAccounts>().CreateAsync(practiceId, cancellation);
                await DemoUnconfirmedAddresses.EnterAsync(jobs, db, cancellation);
                return brought;
            }
        );
        return new Filled(practiceId, watch.Elapsed, outcomes);
    }

    private static async Task LayAsync(
        ClinicDbFactory databases,
        Guid practiceId,
        Instant now,
        LocalDate today,
        CancellationToken cancellation
    )
    {
        await using (var unfenced = databases.OpenWithoutActor())
        {
            unfenced.Practices.Add(new PracticeRow(practiceId));
            await unfenced.SaveChangesAsync(cancellation);
        }
        await using var db = databases.Open();
        var scene = new Scene(db, now).AddPractice(DemoPractice.Name);
        scene.Settings.MarkAsDemo();
        scene.Settings.SetOrderRule(PreparationDays, scene.Settings.GapChancePercent);
        foreach (var salon in DemoPractice.Salons)
            Open(scene, salon, today);
        foreach (var person in DemoPractice.People)
            scene.Hire(person.Name, person.Role, [.. scene.Salons.Where(s => person.Salons.Any(p => p.Name == s.Name))]);
        foreach (var product in DemoPractice.Products)
        {
            var quarters = Enumerable.Range(0, Quarters).Select(back => DemoPractice.LotOf(product, today.PlusMonths(-3 * back)));
            scene.AddProduct(product.Name, product.Kind, product.Chemistry, [.. quarters.Distinct()]);
        }
        scene.ServiceWithPurpose(ServicePurpose.Rebond).Edit("Rebond", ServicePurpose.Rebond, RebondPence, "GBP");
        foreach (var kind in DemoPractice.Kinds)
            scene.AddUnitKind(kind.Name, kind.Base, kind.Workshop).KeepSpares(kind.Spares);
        DemoParameters.AddWorkshopClosures(scene.Workshops, today);
        TourScenes.AddAll(scene, scene.Salons[0], scene.People.First(p => p.Role == StaffRole.FrontDesk));
        await scene.SaveAsync();
    }

    private static void Open(Scene scene, DemoSalon planned, LocalDate today)
    {
        var salon = scene.OpenSalon(planned.Name, planned.Zone, planned.Currency, planned.Chairs);
        salon.Edit(planned.Name, planned.Zone, planned.Currency, planned.Phone, address: null);
        for (var day = IsoDayOfWeek.Monday; day <= IsoDayOfWeek.Sunday; day++)
            salon.SetHours(day, day == planned.RestDay(today) ? [] : [(Guid.CreateVersion7(), DemoSalon.Opens, DemoSalon.Closes)]);
    }

    private static SheetDraft Draft(SheetKind kind, byte[] file)
    {
        var (draft, problem) = SheetDraft.FromFile(kind, file, "GB", DemoPractice.Lane.Currency);
        return draft is null
            ? throw new InvalidOperationException($"The invented {kind.Name} cannot be read: {problem!.Sentence}")
            : draft with
            {
                ChosenDates = DateOrder.YearMonthDay,
            };
    }

    public sealed record Filled(Guid PracticeId, TimeSpan Took, IReadOnlyList<Import.Outcome> Sheets);
}

/// <summary>Writes down what an old binder has no columns for: what was seen at each take-down, and which units went back to be made again.</summary>
public sealed class DemoTakeDownsAndRemakes(ClinicDb db)
{
    public async Task WriteAsync(DemoHistory history, CancellationToken cancellation)
    {
        var zones = DemoPractice.Salons.ToDictionary(s => s.Name, s => DateTimeZoneProviders.Tzdb[s.Zone]);
        var codes = await db.Clients.ToDictionaryAsync(c => c.Id, c => c.Code, cancellation);
        var visits = (await db.Visits.Where(v => v.State == VisitState.Done).ToListAsync(cancellation)).ToDictionary(v =>
            (codes[v.ClientId], v.StartsAt)
        );
        var units = await db.HairSystems.Include(u => u.Promises).AsSplitQuery().ToDictionaryAsync(u => u.Serial, cancellation);
        foreach (var takeDown in history.Lives.SelectMany(l => l.TakeDowns))
        {
            var (told, row) = (takeDown.Visit, takeDown.Removed);
            var starts = (told.Day!.Value + told.Start!.Value).InZoneLeniently(zones[told.Salon!]).ToInstant();
            var visit = visits[(told.ClientCode, starts)];
            var found = new TakeDown(takeDown.Grades, row.Lift is not null, row.LiftedOn, row.LiftZone, row.RemovedBecause!.Value);
            visit.ImportRecord(Guid.CreateVersion7(), units[row.Serial].Id, found, takeDown.WaitsKept, visit.EndsAt, visit.PersonId);
        }
        foreach (var unit in history.Lives.SelectMany(l => l.Units))
        {
            if (unit.SentBackOn(history.Today) is { } day)
                units[unit.Serial].SendBackForRemake(Guid.CreateVersion7(), day, day.PlusDays(Truth.DemoParameters.PromisedDays));
        }
        await db.SaveChangesAsync(cancellation);
    }
}
