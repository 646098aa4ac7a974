using HairClinic.Web.Demo.Truth;
using HairClinic.Web.Features.Binder;
using HairClinic.Web.Features.Settings;

namespace HairClinic.Web.Demo;

/// <summary>An invented client: who they are, what they wear and what is true of them.</summary>
/// <param name="CoverDays">Days of hair they want ahead of them when they order.</param>
/// <param name="HoldEffect">b of hold: how much better bonds hold on this head, per unit of a window's width.</param>
/// <param name="LifeEffect">b of life: how much longer units last with this client.</param>
public sealed record DemoClient(
    int Number,
    DemoSalon Salon,
    string Stylist,
    DemoUnitKind Kind,
    DemoProduct Adhesive,
    LocalDate Since,
    bool WasClientBefore,
    double CoverDays,
    bool Washes,
    DemoClientStatus Ending,
    double HoldEffect,
    double LifeEffect
)
{
    private const int SinceDays = 730;

    public string Code => $"C-{Number:0000}";

    public (int From, int To) HoldWeeks => Kind.HoldWindowWeeks(Adhesive.Attachment);

    public static DemoClient Invent(int number, DemoSalon salon, Random random, LocalDate today)
    {
        var before = random.Next(100) < 20;
        var stylists = salon.Stylists;
        return new DemoClient(
            number,
            salon,
            stylists[random.Next(stylists.Count)].Name,
            Pick(random),
            DemoPractice.Products[Math.Max(0, random.Next(4) - 1)],
            before ? today.PlusDays(random.Next(35) - SinceDays) : today.PlusDays(-random.Next(20, 660)),
            before,
            DemoParameters.CoverDays * Math.Exp(DemoParameters.CoverSpread * random.Normal()),
            Washes: random.Next(100) < 30,
            random.Next(100) switch
            {
                < 4 => DemoClientStatus.Left,
                < 24 => DemoClientStatus.LetsItSlip,
                _ => DemoClientStatus.ComesOn,
            },
            DemoParameters.ClientSpread * random.Normal(),
            DemoParameters.ClientSpread * random.Normal()
        );
    }

    public ClientRow ToBinderRow(Random random) =>
        new()
        {
            Code = Code,
            Name = DemoNames.NameOf(Number),
            Called = random.Next(6) == 0 ? DemoNames.NameOf(Number)[..2] : null,
            HomeSalon = Salon.Name,
            Phone = DemoNames.PhoneOf(Number, Salon.Zone),
            Email = random.Next(5) == 0 ? null : $"client{Number:0000}@example.org",
            Days = random.Next(3) == 0 ? WeekdaySet.Of((IsoDayOfWeek)random.Next(2, 7)) : WeekdaySet.None,
            Born = random.Next(4) == 0 ? null : new LocalDate(random.Next(1948, 2003), random.Next(1, 13), random.Next(1, 29)),
            Care = new()
            {
                Skin = random.Next(5) == 0 ? null : (SkinOiliness)random.Next(3),
                Sweat = random.Next(5) == 0 ? null : (Sweating)random.Next(3),
                SwimsPerWeek = random.Next(3) == 0 ? random.Next(1, 7) / 2m : null,
                WashesPerWeek = random.Next(2) == 0 ? random.Next(1, 5) : null,
                HeatPerWeek = random.Next(3) == 0 ? random.Next(5) : null,
            },
            Note = random.Next(12) switch
            {
                0 => "Prefers the quiet room",
                1 => "Ring, never write",
                2 => "Comes by train; running late is usual",
                _ => null,
            },
        };

    private static DemoUnitKind Pick(Random random)
    {
        var share = random.Next(DemoPractice.Kinds.Sum(k => k.Share));
        return DemoPractice.Kinds.First(k => (share -= k.Share) < 0);
    }
}

/// <summary>How an invented client's two years stand today.</summary>
public enum DemoClientStatus
{
    ComesOn,

    /// <summary>Comes when the window has closed, weeks later, or when an edge is up.</summary>
    LetsItSlip,
    Left,
}

/// <param name="Share">Of a hundred clients, how many wear it.</param>
/// <param name="Spares">Always to be ready beside the one worn.</param>
public sealed record DemoUnitKind(string Name, string Base, string Workshop, int Share, int Spares = 0)
{
    public DemoWorkshop Maker => DemoParameters.Makers.Single(m => m.Name == Workshop);

    public (int From, int To) LifeDays =>
        TradeDefaults.Bases.Where(b => b.Name == Base).Select(b => (b.LifeFromDays, b.LifeToDays)).Single();

    public (int From, int To) HoldWindowWeeks(Attachment attachment) =>
        TradeDefaults
            .HoldWindows.Where(w => (w.Base is null || w.Base == Base) && (w.Attachment is null || w.Attachment == attachment))
            .OrderByDescending(w => (w.Base is null ? 0 : 2) + (w.Attachment is null ? 0 : 1))
            .Select(w => (w.EarliestWeeks, w.LatestWeeks))
            .First();
}
