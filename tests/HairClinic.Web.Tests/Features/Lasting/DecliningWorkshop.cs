using HairClinic.Domain.Bonding;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Shelf;
using HairClinic.Web.Demo.Scenes;
using HairClinic.Web.Learning;
using HairClinic.Web.Workers;
using NodaTime;

namespace HairClinic.Web.Tests.Features.Lasting;

/// <summary>
/// A unit arrives every six days, each for another client. Those up to four months ago lasted as is usual or still wear well; of the two
/// workshops one's units delivered since last half as long.
/// </summary>
internal sealed class DecliningWorkshop
{
    public static readonly LocalDate Today = new(2027, 2, 3);

    /// <summary>The first delivery that was worse.</summary>
    public static readonly LocalDate WorseFrom = Today.PlusDays(-190);

    private Product _adhesive = null!;

    public Person Owner { get; private set; } = null!;

    public Salon Salon { get; private set; } = null!;

    public UnitKind Harbour { get; private set; } = null!;

    public void Lay(Scene scene)
    {
        Open(scene);
        _adhesive = scene.AddProduct("Adhesive A", ProductKind.Adhesive, "acrylic", "A1");
        Harbour = scene.AddUnitKind("Lace, Harbour", "French lace", "Harbour workroom");
        var quarry = scene.AddUnitKind("Lace, Quarry", "French lace", "Quarry workroom");
        for (var i = 0; i < 60; i++)
        {
            var delivered = Today.PlusDays(-400 + 6 * i);
            Wear(scene, $"h-{i}", Harbour, delivered, delivered >= WorseFrom ? 105 : 228 + 3 * (i % 7));
            Wear(scene, $"q-{i}", quarry, delivered, 225 + 4 * (i % 5));
        }
    }

    /// <summary>The practice alone.</summary>
    public void Open(Scene scene)
    {
        scene.AddPractice("North");
        Salon = scene.OpenSalon("Elm Row", "Europe/London", "GBP", 2);
        Owner = scene.Hire("Ottilie Vane", StaffRole.Owner, Salon);
    }

    public static async Task RecalculateAsync(TestClinic clinic)
    {
        var cancel = TestContext.Current.CancellationToken;
        clinic.Clock.AdvanceSeconds(1);
        await clinic.ReadAsync(db => RecalculationQueue.RequestAsync(db, null, clinic.Clock.GetCurrentInstant(), cancel));
        await clinic.UseAsync<RecalculationRunner, bool>(clinic.Job, r => r.RunAsync(cancel));
    }

    // Bonded anew every five weeks, until it is found worn out or today.
    private void Wear(Scene scene, string code, UnitKind kind, LocalDate delivered, int lasts)
    {
        var client = scene.AddClient(code, $"Person {code}", Salon);
        var unit = scene.AddUnit(client, kind, delivered);
        var ends = delivered.PlusDays(lasts);
        for (var on = delivered; on < LocalDate.Min(ends, Today); on = on.PlusDays(35))
        {
            var bond = scene.AddBond(client, unit, on, _adhesive);
            var off = LocalDate.Min(on.PlusDays(35), ends);
            if (off >= Today)
                return;
            bond.Remove(off, RemovalReason.Scheduled);
            unit.TakeOff();
            if (off == ends)
                unit.LeaveService(UnitState.Retired, off, "worn out");
        }
    }
}
