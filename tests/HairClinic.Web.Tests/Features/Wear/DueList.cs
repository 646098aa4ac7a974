using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Replacement;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Visits;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Features.Wear;
using NodaTime;
using Slice = HairClinic.Web.Features.Wear.Due;

namespace HairClinic.Web.Tests.Features.Wear;

/// <summary>
/// A practice of two salons whose bonds hold four to six weeks, and a desk that reads the list. Clients are put on it by how
/// many days ago they were bonded: the window opens on day 28 and closes on day 42, and a week before it opens they are listed.
/// </summary>
public sealed class DueList(Instant? now = null)
{
    private Scene _scene = null!;
    private Product _adhesive = null!;
    private UnitKind _kind = null!;

    public LocalDate Today { get; } = (now ?? TestClinic.UsualNow).InZone(DateTimeZoneProviders.Tzdb["Europe/London"]).Date;

    public Salon ElmRow { get; private set; } = null!;

    public Salon Quayside { get; private set; } = null!;

    public Person Desk { get; private set; } = null!;

    public Person Stylist { get; private set; } = null!;

    public Action<Scene> Lay(Action<DueList>? clients = null, string quaysideZone = "Europe/London") =>
        laid =>
        {
            _scene = laid;
            _scene.AddPractice("Practice under test");
            ElmRow = _scene.OpenSalon("Elm Row", "Europe/London", "GBP", chairs: 3);
            Quayside = _scene.OpenSalon("Quayside", quaysideZone, "GBP", chairs: 1);
            Desk = _scene.Hire("Desk", StaffRole.FrontDesk, ElmRow, Quayside);
            Stylist = _scene.Hire("Stylist", StaffRole.Stylist, ElmRow, Quayside);
            _adhesive = _scene.AddProduct("Adhesive A", ProductKind.Adhesive, "water-based acrylic", "A-1");
            _kind = _scene.AddUnitKind("Everyday", "Monofilament with poly rim", "Workshop North");
            clients?.Invoke(this);
        };

    /// <summary>A client bonded that many days ago, with a spare in house.</summary>
    public (Client Client, Bond Bond) Bonded(
        string code,
        int daysAgo,
        Salon? salon = null,
        UnitState? spare = UnitState.Accepted,
        Instant? at = null
    )
    {
        var client = _scene.AddClient(code, $"Client {code}", salon ?? ElmRow, "+441632960001");
        var on = Today.PlusDays(-daysAgo);
        var bond = _scene.AddBond(client, _scene.AddUnit(client, _kind, on.PlusDays(-10)), on, _adhesive, at);
        if (spare is { } state)
            _scene.AddUnit(client, _kind, on).ImportState(state, new UnitDates { OrderedOn = on }, retiredBecause: null);
        return (client, bond);
    }

    public Bond Lifted(string code, int daysAgo, int liftedDaysAgo)
    {
        var (_, bond) = Bonded(code, daysAgo);
        var day = Today.PlusDays(-liftedDaysAgo);
        bond.ReportLift(new Lift(day, day, LiftZone.Front, SpotFixed: false));
        return bond;
    }

    public Visit Booked(Client client, ServicePurpose purpose, int inDays, int hour = 11) =>
        _scene.Book(
            client,
            _scene.ServiceWithPurpose(purpose),
            _scene.Chairs[0],
            Stylist,
            Today.PlusDays(inDays).At(new LocalTime(hour, 0)).InUtc().ToInstant()
        );

    public void PutOff(Client client, int inDays, Instant? at = null) =>
        Note(client, ContactOutcome.PutOff, at, Today.PlusDays(inDays), "Away");

    public void Note(Client client, ContactOutcome kind, Instant? at = null, LocalDate? until = null, string? reason = null) =>
        _scene.Db.ContactNotes.Add(new ContactNote(Guid.CreateVersion7(), client.Id, kind, at ?? _scene.Now, Desk.Id, until, reason));

    public Task<Slice.Screen> OpenAsync(
        TestClinic clinic,
        DuePart part = DuePart.All,
        DueCursor? after = null,
        bool allSalons = false,
        params Salon[] salons
    ) =>
        clinic.UseAsync<Slice, Slice.Screen>(
            clinic.Acting(Desk, salons.Length > 0 ? salons : [ElmRow]),
            slice => slice.OpenAsync(new(part, allSalons, after), TestContext.Current.CancellationToken)
        );

    /// <summary>The plan as a recalculation would have stored it.</summary>
    public void Plan(Client client, ReorderAnswer answer, LocalDate? orderBy, int sparesMissing = 0)
    {
        var plan = new ReorderPlan(Guid.CreateVersion7(), client.Id);
        plan.Store(new ReorderOutlook(Today, _kind.Id, 0.05, answer, orderBy) { InHand = 1, SparesMissing = sparesMissing });
        _scene.Db.ReorderPlans.Add(plan);
    }

    public Task<Slice.Screen> OpenRisksAsync(TestClinic clinic, GapRiskCursor? after) =>
        clinic.UseAsync<Slice, Slice.Screen>(
            clinic.Acting(Desk, ElmRow),
            slice => slice.OpenAsync(new(DuePart.AtRisk, false, null) { RisksAfter = after }, TestContext.Current.CancellationToken)
        );

    public static IEnumerable<string> Codes(Slice.Screen screen) => screen.Rows.Select(r => r.Code);
}
