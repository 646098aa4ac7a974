using HairClinic.Domain.Bonding;
using HairClinic.Domain.Clients;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Web.Data;
using HairClinic.Web.Demo.Scenes;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Lasting;

/// <summary>
/// Fourteen clients whose units last as long as is usual, and whose next unit is ordered fifty days before the one they wear ends and takes
/// seventy: each goes without hair for nineteen days between two units.
/// </summary>
internal sealed class LatePractice
{
    public const int Clients = 14;

    /// <summary>From the end of a unit until the next is here; the day of the end and the day of the arrival are covered.</summary>
    public const int Late = 20;

    public static readonly LocalDate Today = new(2027, 2, 3);

    private Product _adhesive = null!;
    private UnitKind _kind = null!;

    public Person Owner { get; private set; } = null!;

    public Person Manager { get; private set; } = null!;

    public Salon Salon { get; private set; } = null!;

    public int Bonds { get; private set; }

    public int Lifts { get; private set; }

    public int UnitsEnded { get; private set; }

    /// <summary>Of which something is known: they ended, or were bonded again.</summary>
    public int UnitsSeen { get; private set; }

    /// <summary>Days without hair up to today.</summary>
    public int DaysWithout { get; private set; }

    public void Lay(Scene scene)
    {
        Open(scene);
        for (var i = 0; i < Clients; i++)
            Live(scene, scene.AddClient($"c-{i}", $"Person {i}", Salon), Today.PlusDays(-690 + 5 * i), 160 + 5 * (i % 9), i);
    }

    private void Open(Scene scene)
    {
        scene.AddPractice("North");
        Salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 2);
        Owner = scene.Hire("Ottilie Vane", StaffRole.Owner, Salon);
        Manager = scene.Hire("Mara Test", StaffRole.Manager, Salon);
        _adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "acrylic", "A1");
        _kind = scene.AddUnitKind("Everyday", "Silk top", "Harbour workroom");
    }

    /// <summary>One client, one bond that lifted.</summary>
    public void LayBarely(Scene scene)
    {
        Open(scene);
        var client = scene.AddClient("c-1", "Person One", Salon);
        var unit = scene.AddUnit(client, _kind, Today.PlusDays(-100));
        var bond = scene.AddBond(client, unit, Today.PlusDays(-100), _adhesive);
        bond.ReportLift(new Lift(Today.PlusDays(-75), Today.PlusDays(-75), null, SpotFixed: false));
    }

    /// <summary>Two months later: what was on a head lifted early, what was on its way came, and short bonds were made on old units and new.</summary>
    public async Task<int> GoOnAsync(ClinicDb db, CancellationToken cancellation)
    {
        foreach (var unit in await db.HairSystems.Where(u => u.State == UnitState.Ordered).ToListAsync(cancellation))
        {
            unit.Arrive(Today.PlusDays(4), Salon.Id);
            unit.Inspect(Today.PlusDays(4));
            unit.Accept(Today.PlusDays(4));
        }
        var worn = await db
            .Bonds.Where(b => b.RemovedOn == null)
            .Join(db.HairSystems, b => b.HairSystemId, u => u.Id, (b, u) => new { Bond = b, Unit = u })
            .ToListAsync(cancellation);
        foreach (var (place, on) in worn.Index())
        {
            if (on.Bond.Lift is null)
                on.Bond.ReportLift(new Lift(Today.PlusDays(2), Today.PlusDays(2), null, SpotFixed: false));
            on.Bond.Remove(Today.PlusDays(2), RemovalReason.Lifted);
            on.Unit.TakeOff();
            for (var n = 1; n < 10; n++)
            {
                var bond = new Bond(
                    Guid.CreateVersion7(),
                    on.Unit.Id,
                    on.Bond.ClientId,
                    Today.PlusDays(4 * n),
                    null,
                    Attachment.Liquid,
                    null
                );
                bond.Remove(Today.PlusDays(4 * n + 2), RemovalReason.Lifted);
                db.Bonds.Add(bond);
            }
            on.Unit.LeaveService(place % 2 == 0 ? UnitState.Retired : UnitState.Lost, Today.PlusDays(50), "gone");
        }
        return await db.SaveChangesAsync(cancellation);
    }

    private void Live(Scene scene, Client client, LocalDate arrives, int lasts, int place)
    {
        while (arrives < Today)
        {
            var (unit, ends) = (scene.AddUnit(client, _kind, arrives), arrives.PlusDays(lasts));
            var (bonds, ended) = (Bonds, Wear(scene, client, unit, arrives, ends, place));
            UnitsSeen += ended || Bonds > bonds + 1 ? 1 : 0;
            if (!ended)
                return;
            unit.LeaveService(UnitState.Retired, ends, "worn out");
            UnitsEnded++;
            arrives = ends.PlusDays(Late);
            DaysWithout += Math.Min(Late - 1, Math.Max(0, Period.DaysBetween(ends, Today)));
        }
        // What is ordered by now and still to come.
        scene
            .AddUnit(client, _kind, arrives)
            .ImportState(
                UnitState.Ordered,
                new UnitDates { SpecifiedOn = arrives.PlusDays(-70), OrderedOn = arrives.PlusDays(-70) },
                null,
                0
            );
    }

    // Bonded anew every four weeks; every third lifts on its 26th day.
    private bool Wear(Scene scene, Client client, HairSystem unit, LocalDate from, LocalDate ends, int place)
    {
        for (var (on, n) = (from, place); on < ends; (on, n) = (on.PlusDays(28), n + 1))
        {
            var bond = scene.AddBond(client, unit, on, _adhesive);
            Bonds++;
            var off = LocalDate.Min(on.PlusDays(28), ends);
            var lifted = n % 3 == 0 && on.PlusDays(26) <= off && on.PlusDays(26) <= Today;
            if (lifted)
            {
                bond.ReportLift(new Lift(on.PlusDays(26), on.PlusDays(26), null, SpotFixed: true));
                Lifts++;
            }
            if (off >= Today)
                return false;
            bond.Remove(off, lifted ? RemovalReason.Lifted : RemovalReason.Scheduled);
            unit.TakeOff();
        }
        return true;
    }
}
