using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Orders;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Domain.Visits;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Fence;
using HairClinic.Web.Workers;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Stepping = HairClinic.Web.Features.Units.TakeStep;

namespace HairClinic.Web.Tests.Features.Units;

/// <summary>A practice of two salons and two workshops with units at every stage of their way, and what tests of them ask.</summary>
internal sealed class UnitBook : IAsyncDisposable
{
    public static readonly LocalDate Today = new(2027, 2, 3);

    private static readonly string[] Tables =
    [
        "hair_systems",
        "unit_steps",
        "unit_arrivals",
        "unit_repairs",
        "unit_loans",
        "unit_questions",
        "promise_revisions",
        "workshop_orders",
        "order_promises",
        "bonds",
        "work_items",
    ];

    private UnitBook() { }

    public TestClinic Clinic { get; private set; } = null!;
    public Scene Scene { get; private set; } = null!;
    public Salon ElmRow { get; private set; } = null!;
    public Salon Quayside { get; private set; } = null!;
    public Person Owner { get; private set; } = null!;
    public Person Manager { get; private set; } = null!;
    public Person Desk { get; private set; } = null!;
    public Person Stylist { get; private set; } = null!;
    public Person Trainee { get; private set; } = null!;

    /// <summary>A manager of Quayside.</summary>
    public Person Elsewhere { get; private set; } = null!;

    public Product Adhesive { get; private set; } = null!;
    public UnitKind Kind { get; private set; } = null!;

    /// <summary>Made by another workshop.</summary>
    public UnitKind OtherKind { get; private set; } = null!;

    public Client Una { get; private set; } = null!;
    public Client Ben { get; private set; } = null!;

    /// <summary>A client of Quayside.</summary>
    public Client Far { get; private set; } = null!;

    public PersonActor AtDesk => Clinic.Acting(Desk, ElmRow);
    public PersonActor AsOwner => Clinic.Acting(Owner, ElmRow, Quayside);
    public PersonActor AsManager => Clinic.Acting(Manager, ElmRow);
    public PersonActor AsElsewhere => Clinic.Acting(Elsewhere, Quayside);
    public PersonActor AsTrainee => Clinic.Acting(Trainee, ElmRow);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static async Task<UnitBook> OpenAsync(PgServer server, Action<UnitBook>? lay = null)
    {
        var book = new UnitBook();
        book.Clinic = await TestClinic.OpenAsync(
            server,
            scene =>
            {
                book.Scene = scene.AddPractice("North");
                book.ElmRow = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 1);
                book.Quayside = scene.OpenSalon("Quayside", "Europe/London", "GBP", 1);
                book.Owner = scene.Hire("Owner", StaffRole.Owner, book.ElmRow, book.Quayside);
                book.Manager = scene.Hire("Manager", StaffRole.Manager, book.ElmRow);
                book.Desk = scene.Hire("Desk", StaffRole.FrontDesk, book.ElmRow);
                book.Stylist = scene.Hire("Stylist", StaffRole.Stylist, book.ElmRow);
                book.Trainee = scene.Hire("Trainee", StaffRole.Trainee, book.ElmRow);
                book.Elsewhere = scene.Hire("Elsewhere", StaffRole.Manager, book.Quayside);
                book.Adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "acrylic", "A1");
                book.Kind = scene.AddUnitKind("Everyday", "Silk top", "Workshop North");
                book.OtherKind = scene.AddUnitKind("Gala", "Integration mesh", "Workshop South");
                book.Una = scene.AddClient("c-1", "Una Test", book.ElmRow);
                book.Ben = scene.AddClient("c-2", "Ben Test", book.ElmRow);
                book.Far = scene.AddClient("c-3", "Farah Test", book.Quayside);
                lay?.Invoke(book);
            }
        );
        return book;
    }

    public HairSystem Draft(string serial, Client? client, UnitKind? kind = null)
    {
        var unit = new HairSystem(Guid.CreateVersion7(), serial, client?.Id, (kind ?? Kind).Id, Today.PlusDays(-70));
        Scene.Db.HairSystems.Add(unit);
        return unit;
    }

    /// <summary>Drafts that were sent on a day with one order.</summary>
    public WorkshopOrder Order(string number, LocalDate on, params HairSystem[] units)
    {
        var order = new WorkshopOrder(Guid.CreateVersion7(), number, Scene.Workshops[0].Id, ElmRow.Id, on, "GBP");
        var entry = new UnitStepEntry(Guid.Empty, Today, Clock() - Duration.FromHours(1), Desk.Id);
        order.Send([.. units.Select(u => (u, (long?)60_000))], Guid.CreateVersion7, entry);
        Scene.Db.WorkshopOrders.Add(order);
        return order;
    }

    /// <summary>One that is here, accepted and clean, in a salon for sixty days.</summary>
    public HairSystem InHouse(
        string serial,
        Client? client,
        Salon? salon = null,
        UnitOrigin origin = UnitOrigin.ReadyMade,
        UnitKind? kind = null
    )
    {
        var unit = HairSystem.AddToBook(
            Guid.CreateVersion7(),
            serial,
            client?.Id,
            (kind ?? Kind).Id,
            origin,
            Today,
            Today.PlusDays(-60),
            (salon ?? ElmRow).Id
        );
        Scene.Db.HairSystems.Add(unit);
        return unit;
    }

    /// <summary>One that came from the workshop some days ago and was not looked at yet.</summary>
    public HairSystem Arrived(string serial, Client client, int daysAgo = 1)
    {
        var unit = Draft(serial, client);
        Order($"for {serial}", Today.PlusDays(-60), unit);
        var entry = new UnitStepEntry(Guid.CreateVersion7(), Today, Clock() - Duration.FromMinutes(30), Desk.Id);
        unit.Receive(Today.PlusDays(-daysAgo), ElmRow.Id, damaged: false, null, claimDays: 7, entry);
        return unit;
    }

    /// <summary>A client the trainee has a visit of.</summary>
    public void GiveToTrainee(Client client) =>
        Scene.Book(client, Scene.ServiceWithPurpose(ServicePurpose.Rebond), Scene.Chairs[0], Trainee, Instant.FromUtc(2027, 2, 3, 14, 0));

    /// <summary>A minute later somebody writes a step of a unit, with what the form of it holds.</summary>
    public async Task<Stepping.Outcome> TakeAsync(
        Guid unitId,
        UnitStepKind step,
        Action<Stepping.Input>? write = null,
        PersonActor? by = null,
        Guid? key = null
    )
    {
        Clinic.Clock.AdvanceMinutes(1);
        var input = new Stepping.Input
        {
            UnitId = unitId,
            Step = step,
            On = Today,
            SalonId = (by ?? AtDesk).Salons[0],
            Currency = "GBP",
        };
        write?.Invoke(input);
        return await Clinic.UseAsync<Stepping, Stepping.Outcome>(
            by ?? AtDesk,
            s => s.SaveAsync(key ?? Guid.CreateVersion7(), input, Cancel)
        );
    }

    public Task<Stepping.Outcome> TakeAsync(
        HairSystem unit,
        UnitStepKind step,
        Action<Stepping.Input>? write = null,
        PersonActor? by = null
    ) => TakeAsync(unit.Id, step, write, by);

    /// <summary>The refusal is this one, and not a column of any row changed.</summary>
    public async Task RefusedAsync(string sentence, Func<Task> act)
    {
        var before = await RowsAsync();
        await Refused.SayingAsync(sentence, act);
        Assert.Equal(before, await RowsAsync());
    }

    /// <summary>Every column of every row that a step could touch, asked past the program.</summary>
    public Task<string> RowsAsync() =>
        AskAsync(
            "select coalesce(string_agg(r, E'\\n' order by r), '') from ("
                + string.Join(" union all ", Tables.Select(t => $"select '{t} ' || to_jsonb(t)::text as r from {t} t"))
                + ") rows"
        );

#pragma warning disable EF1002 // It is this test's own text.
    /// <summary>One value, by SQL of the test's own.</summary>
    public Task<string> AskAsync(string sql) =>
        Clinic.ReadAsync(db => db.Database.SqlQueryRaw<string>($"select ({sql})::text as \"Value\"").SingleAsync(Cancel));
#pragma warning restore EF1002

    public Task<HairSystem> UnitAsync(HairSystem unit) => UnitAsync(unit.Id);

    public Task<HairSystem> UnitAsync(Guid id) =>
        Clinic.ReadAsync(db =>
            db.HairSystems.AsNoTracking()
                .Include(u => u.Promises)
                .Include(u => u.Arrivals)
                .Include(u => u.Repairs)
                .Include(u => u.Steps)
                .AsSplitQuery()
                .SingleAsync(u => u.Id == id, Cancel)
        );

    /// <summary>What it is and where, and the last line of its trail with the day and who wrote it.</summary>
    public async Task AssertAsync(HairSystem unit, UnitState state, UnitPlace? place, UnitStepKind last, LocalDate? on = null)
    {
        var stored = await UnitAsync(unit);
        var step = stored.Steps.Where(s => s.Stands).MaxBy(s => s.RecordedAt)!;
        Assert.Equal((state, place, place == UnitPlace.Salon), (stored.State, stored.Place, stored.PlaceSalonId is not null));
        Assert.Equal((last, on ?? Today, (Guid?)Desk.Id), (step.Kind, step.On, step.RecordedBy));
    }

    public Task WorkAsync() => Clinic.UseAsync<PracticeWorkRunner, int>(Clinic.Job, w => w.RunAllDueAsync(Cancel));

    /// <summary>Two do the same at the same moment.</summary>
    /// <returns>What came of each: null where it was done.</returns>
    public static async Task<Exception?[]> BothAsync(params Func<Task>[] acts) =>
        await Task.WhenAll(acts.Select(a => Task.Run(() => Record.ExceptionAsync(a).AsTask())));

    public ValueTask DisposeAsync() => Clinic.DisposeAsync();

    private Instant Clock() => Scene.Now;
}
