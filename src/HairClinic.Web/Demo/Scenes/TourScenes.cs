using HairClinic.Web.Features.MyHair;

namespace HairClinic.Web.Demo.Scenes;

/// <summary>Named scenes for a guided tour, each with an invented client of its own. Codes begin with T, apart from the binder's.</summary>
public static class TourScenes
{
    public static readonly IReadOnlyList<TourStop> All =
    [
        new(
            "T-01",
            "A lift told by phone",
            "The client rang this morning: the bond lifted yesterday at the temples, and nobody has put it right yet."
        ),
        new("T-02", "Before the wedding", "A wedding in three weeks pulls the rebond ahead of it; the reason says so."),
        new("T-03", "No spare, and the order is late", "The worn unit is old, the next was promised for last week and has not come."),
        new("T-04", "First fitting, still curing", "Bonded two hours ago: nothing wet until tomorrow."),
        new("T-05", "One person, two records", "The same phone and nearly the same name twice (with T-06): merge them, and undo it."),
        new(
            "T-07",
            "Everything at once",
            "The worn unit is at its end, the spare is lost, the workshop is late again, and an edge came up last week."
        ),
        new(
            "T-08",
            "It wears faster than its age",
            "From one take-down to the next it wears far faster than a unit of its age: look at the spare."
        ),
        new("T-09", "An order that was forgotten", "Ordered more than a year ago and never heard of again: it is not counted on."),
    ];

    public static void AddAll(Scene scene, Salon salon, Person desk)
    {
        var today = salon.DayOf(scene.Now);
        LiftedByPhone(scene, salon, today);
        BeforeTheWedding(scene, salon, today);
        NoSpareAndLate(scene, salon, today);
        StillCuring(scene, salon, today);
        TwoRecords(scene, salon, desk);
        EverythingAtOnce(scene, salon, today);
        WearsFast(scene, salon, today);
        Forgotten(scene, salon, today);
        foreach (var place in scene.Salons)
            Stock(scene, place, today);
    }

    public static Bond LiftedByPhone(Scene scene, Salon salon, LocalDate today)
    {
        var client = scene.AddClient("T-01", "Marguerite Fallowell", salon, "+447700900101");
        var bond = scene.AddBond(
            client,
            scene.AddUnit(client, scene.Kinds[0], today.PlusDays(-60)),
            today.PlusDays(-16),
            scene.Products[0]
        );
        bond.ReportLift(new Lift(today, today.PlusDays(-1), LiftZone.Temples, SpotFixed: false));
        return bond;
    }

    public static Bond BeforeTheWedding(Scene scene, Salon salon, LocalDate today)
    {
        var client = scene.AddClient("T-02", "Ottoline Brackenridge", salon, "+447700900102");
        client.AddLifeEvent(
            new LifeEvent(Guid.CreateVersion7(), client.Id, LifeEventKind.Celebration, today.PlusDays(21), today.PlusDays(21), away: false)
        );
        return scene.AddBond(client, scene.AddUnit(client, scene.Kinds[3], today.PlusDays(-40)), today.PlusDays(-14), scene.Products[0]);
    }

    public static HairSystem NoSpareAndLate(Scene scene, Salon salon, LocalDate today)
    {
        var client = scene.AddClient("T-03", "Casimir Penwarden", salon, "+447700900103", DemoLetters.CasimirsAddress);
        scene.AddBond(client, scene.AddUnit(client, scene.Kinds[1], today.PlusDays(-120)), today.PlusDays(-15), scene.Products[1]);
        var next = new HairSystem(Guid.CreateVersion7(), "T-03-next", client.Id, scene.Kinds[1].Id, today.PlusDays(-66));
        var workshop = scene.Kinds[1].WorkshopId!.Value;
        var order = new WorkshopOrder(Guid.CreateVersion7(), "T-03", workshop, salon.Id, today.PlusDays(-63), salon.Currency);
        var entry = new UnitStepEntry(Guid.Empty, today, scene.Now, By: null);
        order.Send([(next, null)], Guid.CreateVersion7, entry);
        order.Acknowledge(today.PlusDays(-60), today);
        order.Promise(Guid.CreateVersion7(), today.PlusDays(-7), today.PlusDays(-60), saidBy: null, today);
        order.Spread(next, Guid.CreateVersion7, entry);
        scene.Db.WorkshopOrders.Add(order);
        scene.Db.HairSystems.Add(next);
        scene.Db.FindWords.Add(Data.FindWordIndexer.For(next));
        return next;
    }

    public static Bond StillCuring(Scene scene, Salon salon, LocalDate today)
    {
        var client = scene.AddClient("T-04", "Hyacinth Adebayo-Moor", salon, "+447700900104", DemoLetters.HyacinthsAddress);
        // Whoever looks at a household's pages finds two on one address.
        scene.Db.Guardians.Add(
            new Guardian(Guid.CreateVersion7(), client.Id, "Casimir Penwarden", DemoLetters.CasimirsAddress, endsOn: null)
        );
        var made = scene.Now - Duration.FromHours(2);
        return scene.AddBond(client, scene.AddUnit(client, scene.Kinds[0], today.PlusDays(-5)), salon.DayOf(made), scene.Products[0], made);
    }

    public static (Client Kept, Client Twin) TwoRecords(Scene scene, Salon salon, Person desk)
    {
        var kept = scene.AddClient("T-05", "Jemima Corrigall", salon, "+447700900105", "jemima@example.org");
        kept.SetBirthDateAndNote(birthDate: null, $"Two records: {desk.Name} noticed, nobody merged them yet");
        return (kept, scene.AddClient("T-06", "Jemima Corrigal", salon, "+447700900105"));
    }

    /// <summary>Ready-made units of nobody's: two to lend or to give, and one that is still to be cleaned.</summary>
    public static void Stock(Scene scene, Salon salon, LocalDate today)
    {
        for (var i = 1; i <= 3; i++)
        {
            var (id, serial) = (Guid.CreateVersion7(), $"S-{scene.Salons.ToList().IndexOf(salon) + 1}{i}");
            var here = today.PlusDays(-30 * i);
            var unit = HairSystem.AddToBook(id, serial, null, scene.Kinds[^i].Id, UnitOrigin.ReadyMade, today, here, salon.Id);
            if (i == 3)
                unit.MarkCleaning(UnitCleaning.ToBeCleaned, today, new UnitStepEntry(Guid.CreateVersion7(), today, scene.Now, By: null));
            scene.Db.HairSystems.Add(unit);
            scene.Db.FindWords.Add(Data.FindWordIndexer.For(unit));
        }
    }

    /// <returns>The unit that should have come.</returns>
    public static HairSystem EverythingAtOnce(Scene scene, Salon salon, LocalDate today)
    {
        var client = scene.AddClient("T-07", "Isolde Quarrington", salon, "+447700900107");
        var kind = scene.Kinds[^2];
        var worn = scene.AddUnit(client, kind, today.PlusDays(-102));
        var spare = scene.AddUnit(client, kind, today.PlusDays(-90));
        var bond = Renewed(scene, salon, client, null, worn, today.PlusDays(-95), grade: null);
        bond = Renewed(scene, salon, client, bond, worn, today.PlusDays(-61), grade: 1);
        bond = Renewed(scene, salon, client, bond, worn, today.PlusDays(-27), grade: InspectionGrades.PlanReplacement);
        spare.LeaveService(UnitState.Lost, today.PlusDays(-20), "not in the drawer");

        var (visit, at) = Came(scene, salon, client, ServicePurpose.FixLift, today.PlusDays(-6));
        var edge = new EdgeFindings(Up: true, today.PlusDays(-7), LiftZone.Front, SpotFixed: true);
        visit.RecordCare(Guid.CreateVersion7(), bond, edge, salon, at, by: null, note: null);

        var next = OnOrder(scene, client, kind, "T-07-next", today.PlusDays(-80));
        next.AddDeliveryPromise(Guid.CreateVersion7(), today.PlusDays(-24), today.PlusDays(-77));
        next.AcknowledgeOrder(today.PlusDays(-77));
        next.AddDeliveryPromise(Guid.CreateVersion7(), today.PlusDays(-10), today.PlusDays(-31));
        next.AddDeliveryPromise(Guid.CreateVersion7(), today.PlusDays(4), today.PlusDays(-17));
        return next;
    }

    /// <returns>The unit that is on the head.</returns>
    public static HairSystem WearsFast(Scene scene, Salon salon, LocalDate today)
    {
        var client = scene.AddClient("T-08", "Leopold Ashgrove", salon, "+447700900108");
        var worn = scene.AddUnit(client, scene.Kinds[3], today.PlusDays(-80));
        var bond = Renewed(scene, salon, client, null, worn, today.PlusDays(-76), grade: null);
        bond = Renewed(scene, salon, client, bond, worn, today.PlusDays(-56), grade: 0);
        bond = Renewed(scene, salon, client, bond, worn, today.PlusDays(-36), grade: 1);
        Renewed(scene, salon, client, bond, worn, today.PlusDays(-16), grade: 2);
        var next = OnOrder(scene, client, scene.Kinds[3], "T-08-next", today.PlusDays(-28));
        next.AcknowledgeOrder(today.PlusDays(-25));
        next.AddDeliveryPromise(Guid.CreateVersion7(), today.PlusDays(28), today.PlusDays(-25));
        return worn;
    }

    /// <returns>The unit that never came.</returns>
    public static HairSystem Forgotten(Scene scene, Salon salon, LocalDate today)
    {
        var client = scene.AddClient("T-09", "Winifred Tarrant-Obi", salon, "+447700900109");
        scene.AddBond(client, scene.AddUnit(client, scene.Kinds[0], today.PlusDays(-110)), today.PlusDays(-12), scene.Products[0]);
        var lost = OnOrder(scene, client, scene.Kinds[0], "T-09-old", today.PlusDays(-400));
        lost.AcknowledgeOrder(today.PlusDays(-396));
        return lost;
    }

    private static HairSystem OnOrder(Scene scene, Client client, UnitKind kind, string serial, LocalDate ordered)
    {
        var unit = new HairSystem(Guid.CreateVersion7(), serial, client.Id, kind.Id, ordered.PlusDays(-1));
        unit.Order(ordered);
        scene.Db.HairSystems.Add(unit);
        scene.Db.FindWords.Add(Data.FindWordIndexer.For(unit));
        return unit;
    }

    private static Bond Renewed(Scene scene, Salon salon, Client client, Bond? old, HairSystem unit, LocalDate day, int? grade)
    {
        var adhesive = scene.Products[0];
        var (visit, at) = Came(scene, salon, client, old is null ? ServicePurpose.FirstFitting : ServicePurpose.Rebond, day);
        var found = new TakeDown(InspectionGrades.AsNew with { Shedding = grade }, false, null, null, RemovalReason.Scheduled);
        var use = (Guid.CreateVersion7(), new AppliedProduct(adhesive.Id, adhesive.Lots[0].Id, 3));
        var made = new NewBond(Guid.CreateVersion7(), unit, at, Attachment.Liquid, [use], WaitsKept: true);
        var basis = scene.DueCalculatorFor(client, unit, adhesive);
        var worn = old is null ? ((Bond, HairSystem, TakeDown)?)null : (old, unit, found);
        var bond = visit.RecordRebond(Guid.CreateVersion7(), worn, made, salon, basis.WindowFor(salon.DayOf(at)), at, by: null, note: null);
        scene.Db.Bonds.Add(bond);
        return bond;
    }

    // Without chair and hands: these are the binder's to take.
    private static (Visit, Instant) Came(Scene scene, Salon salon, Client client, ServicePurpose purpose, LocalDate day)
    {
        var service = scene.ServiceWithPurpose(purpose);
        var visit = new Visit(Guid.CreateVersion7(), client.Id, salon.Id, service.Id);
        var starts = day.At(new LocalTime(11, 0)).InZoneLeniently(salon.TimeZone).ToInstant();
        visit.PutAt(service, starts, chairId: null, personId: null, salon, [.. service.Steps.Select(_ => Guid.CreateVersion7())]);
        scene.Db.Visits.Add(visit);
        return (visit, visit.EndsAt);
    }
}

/// <summary>A scene to show somebody: whom to look up, and what there is to see.</summary>
public sealed record TourStop(string ClientCode, string Title, string See);
