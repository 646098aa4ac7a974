using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using NodaTime;

namespace HairClinic.Web.Demo.Scenes;

/// <summary>Named scenes for a guided tour, each with an invented client of its own. Codes begin with T, apart from the binder's.</summary>
public static class Tours
{
    /// <summary>An order in flight, and the page of another client too.</summary>
    public const string CasimirsAddress = "casimir@example.org";

    /// <summary>A bond that is still setting.</summary>
    public const string HyacinthsAddress = "hyacinth@example.org";

    public static readonly IReadOnlyList<Tour> All =
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
    ];

    public static void Lay(Scene scene, Salon salon, Person desk)
    {
        var today = salon.DayOf(scene.Now);
        LiftedByPhone(scene, salon, today);
        BeforeTheWedding(scene, salon, today);
        NoSpareAndLate(scene, salon, today);
        StillCuring(scene, salon, today);
        TwoRecords(scene, salon, desk);
    }

    public static Bond LiftedByPhone(Scene scene, Salon salon, LocalDate today)
    {
        var client = scene.Welcome("T-01", "Marguerite Fallowell", salon, "+447700900101");
        var bond = scene.Bond(client, scene.Unit(client, scene.Kinds[0], today.PlusDays(-60)), today.PlusDays(-16), scene.Products[0]);
        bond.ReportLift(new Lift(today, today.PlusDays(-1), LiftZone.Temples, SpotFixed: false));
        return bond;
    }

    public static Bond BeforeTheWedding(Scene scene, Salon salon, LocalDate today)
    {
        var client = scene.Welcome("T-02", "Ottoline Brackenridge", salon, "+447700900102");
        client.Plan(
            new LifeEvent(Guid.CreateVersion7(), client.Id, LifeEventKind.Celebration, today.PlusDays(21), today.PlusDays(21), away: false)
        );
        return scene.Bond(client, scene.Unit(client, scene.Kinds[3], today.PlusDays(-40)), today.PlusDays(-14), scene.Products[0]);
    }

    public static HairSystem NoSpareAndLate(Scene scene, Salon salon, LocalDate today)
    {
        var client = scene.Welcome("T-03", "Casimir Penwarden", salon, "+447700900103", CasimirsAddress);
        scene.Bond(client, scene.Unit(client, scene.Kinds[1], today.PlusDays(-120)), today.PlusDays(-15), scene.Products[1]);
        var next = new HairSystem(Guid.CreateVersion7(), "T-03-next", client.Id, scene.Kinds[1].Id, today.PlusDays(-66));
        next.Order(today.PlusDays(-63));
        next.Promise(Guid.CreateVersion7(), today.PlusDays(-7), today.PlusDays(-60));
        next.Acknowledge(today.PlusDays(-60));
        scene.Db.HairSystems.Add(next);
        scene.Db.FindWords.Add(Data.FindWords.Of(next));
        return next;
    }

    public static Bond StillCuring(Scene scene, Salon salon, LocalDate today)
    {
        var client = scene.Welcome("T-04", "Hyacinth Adebayo-Moor", salon, "+447700900104", HyacinthsAddress);
        // Whoever looks at a household's pages finds two on one address.
        scene.Db.Guardians.Add(new Guardian(Guid.CreateVersion7(), client.Id, "Casimir Penwarden", CasimirsAddress, endsOn: null));
        var made = scene.Now - Duration.FromHours(2);
        return scene.Bond(client, scene.Unit(client, scene.Kinds[0], today.PlusDays(-5)), salon.DayOf(made), scene.Products[0], made);
    }

    public static (Client Kept, Client Twin) TwoRecords(Scene scene, Salon salon, Person desk)
    {
        var kept = scene.Welcome("T-05", "Jemima Corrigall", salon, "+447700900105", "jemima@example.org");
        kept.Describe(birthDate: null, $"Two records: {desk.Name} noticed, nobody merged them yet");
        return (kept, scene.Welcome("T-06", "Jemima Corrigal", salon, "+447700900105"));
    }
}
