using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Web.Fence;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Slice = HairClinic.Web.Features.Clients.NoteRepair;

namespace HairClinic.Web.Tests.Features.Clients.NoteRepair;

public sealed class NoteRepairTests(PgServer server)
{
    private static readonly LocalDate Today = new(2027, 2, 3);
    private Client _client = null!;
    private Person _stylist = null!;
    private Salon _salon = null!;
    private HairSystem _unit = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_repair_is_kept_once_and_the_unit_goes_on()
    {
        await using var clinic = await OpenAsync();
        var key = Guid.CreateVersion7();

        await SaveAsync(clinic, key, Input());
        await SaveAsync(clinic, key, Input());

        var stored = await clinic.ReadAsync(db => db.HairSystems.Include(u => u.Repairs).SingleAsync(Cancel));
        Assert.Equal([(Today, RepairKind.NewFront)], stored.Repairs.Select(r => (r.DoneOn, r.Kind)));
        Assert.Equal(UnitState.Bonded, stored.State);
        var screen = await clinic.UseAsync<Slice, Slice.Screen?>(Stylist(clinic), s => s.OpenAsync(_client.Id, Cancel));
        Assert.Equal([(_unit.Serial, Today)], screen!.Repairs.Select(r => (r.Serial, r.On)));
    }

    [Fact]
    public async Task Before_it_came_or_after_it_is_gone_it_cannot_be_repaired()
    {
        await using var clinic = await OpenAsync();

        await Refused.SayingAsync(
            "Unit {0} was not here yet on {1}.",
            () => SaveAsync(clinic, Guid.CreateVersion7(), Input() with { On = Today.PlusDays(-200) })
        );
        await Refused.SayingAsync(
            "This unit is not among the client’s any more.",
            () => SaveAsync(clinic, Guid.CreateVersion7(), Input() with { UnitId = Guid.CreateVersion7() })
        );

        Assert.Equal(0, await clinic.ReadAsync(db => db.UnitRepairs.CountAsync(Cancel)));
    }

    private Slice.Input Input() =>
        new()
        {
            ClientId = _client.Id,
            UnitId = _unit.Id,
            Kind = RepairKind.NewFront,
            On = Today,
        };

    private PersonActor Stylist(TestClinic clinic) => clinic.Acting(_stylist, _salon);

    private Task<Slice.Outcome> SaveAsync(TestClinic clinic, Guid key, Slice.Input input) =>
        clinic.UseAsync<Slice, Slice.Outcome>(Stylist(clinic), s => s.SaveAsync(key, input, Cancel));

    private Task<TestClinic> OpenAsync() =>
        TestClinic.OpenAsync(
            server,
            scene =>
            {
                scene.AddPractice("North");
                _salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 1);
                _stylist = scene.Hire("Stylist", StaffRole.Stylist, _salon);
                var adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "acrylic", "A1");
                _client = scene.AddClient("c-1", "Una Test", _salon);
                _unit = scene.AddUnit(_client, scene.AddUnitKind("Everyday", "Silk top", "Workshop North"), Today.PlusDays(-100));
                scene.AddBond(_client, _unit, Today.PlusDays(-10), adhesive);
            }
        );
}
