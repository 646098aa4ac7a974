using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Data.Work;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Clients.EndNeed;

namespace HairClinic.Web.Tests.Features.Clients.EndNeed;

/// <summary>A client whose last unit came off five days ago, with a draft, an order, a unit on its way, a spare, visits ahead and letters that wait.</summary>
internal sealed class EndNeedScene
{
    public static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public ClientScene Given { get; } = new();

    public Client Ada { get; private set; } = null!;

    public HairSystem Worn { get; private set; } = null!;

    public HairSystem Spare { get; private set; } = null!;

    public HairSystem Draft { get; private set; } = null!;

    public HairSystem Ordered { get; private set; } = null!;

    public HairSystem Shipped { get; private set; } = null!;

    public Visit Here { get; private set; } = null!;

    public Visit There { get; private set; } = null!;

    public LocalDate TakenOff => Given.Today.PlusDays(-5);

    public async Task<TestClinic> OpenAsync(PgServer server, Action<EndNeedScene>? more = null) =>
        await TestClinic.OpenAsync(
            server,
            Given.Laying(_ =>
            {
                Lay();
                more?.Invoke(this);
            })
        );

    private void Lay()
    {
        var scene = Given.Scene;
        Ada = scene.AddClient("C-1", "Ada Fenwick", Given.Here, email: "ada@example.test");
        Worn = scene.AddUnit(Ada, Given.Lace, Given.Today.PlusDays(-60));
        var bond = scene.AddBond(Ada, Worn, Given.Today.PlusDays(-40), Given.Adhesive);
        bond.Remove(TakenOff, RemovalReason.Leaving);
        Worn.TakeOff(Given.Here.Id);
        Spare = scene.AddUnit(Ada, Given.Lace, Given.Today.PlusDays(-20));
        Draft = Add("D-1", _ => { });
        Ordered = Add("O-1", u => u.Order(Given.Today.PlusDays(-10)));
        Shipped = Add(
            "S-1",
            u =>
            {
                u.Order(Given.Today.PlusDays(-30));
                u.Ship(Given.Today.PlusDays(-2));
            }
        );
        Here = scene.Book(Ada, scene.Services[0], Given.Chair, Given.Stylist, scene.Now + Duration.FromDays(7));
        There = scene.Book(
            Ada,
            scene.Services[0],
            scene.Chairs.First(c => c.SalonId == Given.There.Id),
            Given.StylistThere,
            scene.Now + Duration.FromDays(9)
        );
        scene.Db.WorkItems.AddRange(
            WorkItemFactory.SendLetter(Letter(LetterKind.Invitation), scene.Now),
            WorkItemFactory.SendLetter(Letter(LetterKind.SignInLink), scene.Now),
            WorkItemFactory.SendLetter(new Letter("desk@example.test", "A", "B"), scene.Now)
        );
        scene.Db.ClientSignIns.Add(new ClientSignIn(Guid.NewGuid(), Ada.Id, "ada@example.test", scene.Now));
        scene.Db.CalendarFeeds.Add(new CalendarFeed(Guid.CreateVersion7(), Ada.Id, "ada@example.test", [1], scene.Now));
    }

    public Letter Letter(LetterKind kind) => new("ada@example.test", "Your link", "Words.") { Kind = kind, For = Ada.Id };

    public Task<Slice.Screen?> ScreenAsync(TestClinic clinic) =>
        clinic.UseAsync<Slice, Slice.Screen?>(clinic.Acting(Given.Desk, Given.Here), s => s.OpenAsync(Ada.Id, Cancel));

    /// <summary>All of it as the form would send it: the order called off, the worn one destroyed, the spare given back.</summary>
    public async Task<Slice.Input> InputAsync(TestClinic clinic, NeedEnd because, bool? visits = true)
    {
        var input = (await ScreenAsync(clinic))!.Start with { Because = because, On = TakenOff, CallOffVisits = visits };
        Choose(input, Ordered, UnitAfterNeed.CalledOff);
        Choose(input, Worn, UnitAfterNeed.Destroyed);
        Choose(input, Spare, UnitAfterNeed.GivenBack);
        return input;
    }

    public static void Choose(Slice.Input input, HairSystem unit, UnitAfterNeed after) =>
        input.Units.Single(u => u.UnitId == unit.Id).After = after;

    public Task<Slice.Outcome> SaveAsync(TestClinic clinic, Slice.Input input, Guid? key = null) =>
        clinic.UseAsync<Slice, Slice.Outcome>(
            clinic.Acting(Given.Desk, Given.Here),
            s => s.SaveAsync(key ?? Guid.CreateVersion7(), input, Cancel)
        );

    public Task<UnitState> StateAsync(TestClinic clinic, HairSystem unit) =>
        clinic.ReadAsync(db => db.HairSystems.Where(u => u.Id == unit.Id).Select(u => u.State).SingleAsync(Cancel));

    public Task<List<VisitState>> VisitsAsync(TestClinic clinic) =>
        clinic.ReadAsync(db =>
            db.Visits.Where(v => v.ClientId == Ada.Id).OrderBy(v => v.StartsAt).Select(v => v.State).ToListAsync(Cancel)
        );

    private HairSystem Add(string serial, Action<HairSystem> follow)
    {
        var unit = new HairSystem(Guid.CreateVersion7(), serial, Ada.Id, Given.Lace.Id, Given.Today.PlusDays(-40));
        follow(unit);
        Given.Scene.Db.HairSystems.Add(unit);
        return unit;
    }
}
