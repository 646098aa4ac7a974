using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Work;
using HairClinic.Web.Data.Writes;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Tests.Data.Writes;

/// <summary>Whatever changes what a client's next order hangs on asks for it in the same save, and nothing else does.</summary>
public sealed class ReplanOrdersInterceptorTests(PgServer server)
{
    private static readonly LocalDate Today = new(2027, 2, 3);
    private Salon _salon = null!;
    private Salon _other = null!;
    private Client _client = null!;
    private HairSystem _worn = null!;
    private HairSystem _spare = null!;
    private UnitKind _kind = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static readonly Dictionary<string, Func<ReplanOrdersInterceptorTests, ClinicDb, Task>> Changes = new()
    {
        ["a bond is made"] = async (t, db) =>
        {
            (await t.Spare(db)).PutOn(Today);
            (await db.Bonds.SingleAsync(Cancel)).Remove(Today, RemovalReason.Scheduled);
            db.Bonds.Add(new Bond(Guid.CreateVersion7(), t._spare.Id, t._client.Id, Today, null, Attachment.Liquid, null));
        },
        ["a bond comes off"] = async (_, db) => (await db.Bonds.SingleAsync(Cancel)).Remove(Today, RemovalReason.Scheduled),
        ["a unit goes"] = async (t, db) => (await t.Spare(db)).LeaveService(UnitState.Lost, Today, "Lost"),
        ["a unit goes to nobody"] = async (t, db) => db.Entry(await t.Spare(db)).Property(u => u.ClientId).CurrentValue = null,
        ["a unit comes"] = (t, db) =>
        {
            db.HairSystems.Add(new HairSystem(Guid.CreateVersion7(), "U-9", t._client.Id, t._kind.Id, Today));
            return Task.CompletedTask;
        },
        ["a unit is mended"] = async (t, db) => (await t.Spare(db)).AddRepair(Guid.CreateVersion7(), Today, RepairKind.Rim, null),
        ["a workshop promises"] = async (t, db) => (await t.Spare(db)).AddDeliveryPromise(Guid.CreateVersion7(), Today.PlusDays(30), Today),
        ["a habit is noted"] = (t, db) =>
        {
            db.CareFacts.Add(new CareFact(Guid.CreateVersion7(), t._client.Id, Today, new() { Skin = SkinOiliness.Oily }));
            return Task.CompletedTask;
        },
        ["they move to another salon"] = async (t, db) => (await db.Clients.SingleAsync(Cancel)).MoveTo(t._other.Id),
        ["they leave"] = async (_, db) => (await db.Clients.SingleAsync(Cancel)).Leave(Today),
    };

    private static readonly Dictionary<string, Func<ReplanOrdersInterceptorTests, ClinicDb, Task>> Others = new()
    {
        ["their note"] = async (_, db) => (await db.Clients.SingleAsync(Cancel)).SetBirthDateAndNote(null, "Comes by train"),
        ["a sound edge"] = async (_, db) => (await db.Bonds.SingleAsync(Cancel)).MarkSeenSound(Today),
        ["an event of theirs"] = async (t, db) =>
            (await db.Clients.Include(c => c.Events).SingleAsync(Cancel)).AddLifeEvent(
                new LifeEvent(
                    Guid.CreateVersion7(),
                    t._client.Id,
                    LifeEventKind.Celebration,
                    Today.PlusDays(9),
                    Today.PlusDays(9),
                    away: false
                )
            ),
    };

    public static TheoryData<string> WhatAsks => new(Changes.Keys);

    public static TheoryData<string> WhatDoesNot => new(Others.Keys);

    [Theory]
    [MemberData(nameof(WhatAsks))]
    public async Task What_the_next_order_hangs_on_asks_for_it(string what)
    {
        await using var clinic = await OpenAsync();

        var item = Assert.Single(await AfterAsync(clinic, Changes[what]));

        Assert.Equal(WorkKind.PlanOrders, item.Kind);
        Assert.Equal([_client.Id], WorkItemFactory.ReadBody<PlanOrdersBody>(item).ClientIds);
    }

    [Theory]
    [MemberData(nameof(WhatDoesNot))]
    public async Task What_it_does_not_hang_on_asks_for_nothing(string what)
    {
        await using var clinic = await OpenAsync();

        Assert.Empty(await AfterAsync(clinic, Others[what]));
    }

    [Theory]
    [InlineData(ReplanOrdersInterceptor.MostClients, WorkKind.PlanOrders)]
    [InlineData(ReplanOrdersInterceptor.MostClients + 1, WorkKind.Recalculate)]
    public async Task A_save_that_touches_many_asks_for_the_whole_practice(int clients, WorkKind kinds)
    {
        await using var clinic = await OpenAsync();

        var items = await AfterAsync(
            clinic,
            (_, db) =>
            {
                for (var i = 0; i < clients; i++)
                {
                    var one = new Client(Guid.CreateVersion7(), $"N-{i}", $"Client {i}", _salon.Id);
                    db.Clients.Add(one);
                    db.CareFacts.Add(new CareFact(Guid.CreateVersion7(), one.Id, Today, new() { Skin = SkinOiliness.Dry }));
                }
                return Task.CompletedTask;
            }
        );

        Assert.Equal(kinds, Assert.Single(items).Kind);
    }

    private Task<TestClinic> OpenAsync() =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("North");
                _salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 1);
                _other = scene.OpenSalon("Quay", "Europe/London", "GBP", 1);
                var adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "acrylic", "A1");
                _kind = scene.AddUnitKind("Everyday", "Silk top", "Workshop North");
                _client = scene.AddClient("c-1", "Una Test", _salon);
                _worn = scene.AddUnit(_client, _kind, Today.PlusDays(-200));
                _spare = scene.AddUnit(_client, _kind, Today.PlusDays(-200));
                scene.AddBond(_client, _worn, Today.PlusDays(-30), adhesive);
            }
        );

    private Task<HairSystem> Spare(ClinicDb db) =>
        db.HairSystems.Include(u => u.Promises).Include(u => u.Repairs).SingleAsync(u => u.Id == _spare.Id, Cancel);

    private async Task<List<WorkItem>> AfterAsync(TestClinic clinic, Func<ReplanOrdersInterceptorTests, ClinicDb, Task> change)
    {
        await clinic.ReadAsync(db => db.WorkItems.ExecuteDeleteAsync(Cancel));
        await clinic.ReadAsync(async db =>
        {
            await change(this, db);
            return await db.SaveChangesAsync(Cancel);
        });
        return await clinic.ReadAsync(db =>
            db.WorkItems.AsNoTracking().Where(w => w.Kind == WorkKind.PlanOrders || w.Kind == WorkKind.Recalculate).ToListAsync(Cancel)
        );
    }
}
