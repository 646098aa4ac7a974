namespace HairClinic.Web.Demo.Truth;

/// <summary>What is true of the invented practice: the numbers its history is drawn from, so that what is later learnt from it can be held against them.</summary>
/// <remarks>
/// Hold and life are drawn from the model they are fitted with, ln T = m + λ·(δ + b) + xᵀβ + eˢ·σ·ε with m, σ and λ of the
/// practice's own row (<see cref="WindowPrior"/>) and Weibull noise. A factor is e to the power of its β: it multiplies
/// the days. Skin, sweat, swimming and washes change nothing. Common practice at best, no source.
/// </remarks>
public static class DemoParameters
{
    /// <summary>δ of hold, per unit of a window's width: these hands are better than the trade's rows.</summary>
    public const double HoldPractice = 0.24;

    /// <summary>s of hold: ln of the factor on each window's σ.</summary>
    public const double HoldLogScale = 0.10;

    /// <summary>Factor on hold at the salon by the sea.</summary>
    public const double SeaAir = 0.93;

    /// <summary>Factor on hold of bases with poly at the rim, beyond the practice's rows.</summary>
    public const double PolyRim = 1.18;

    /// <summary>Factor on hold of a bond from the bad lot.</summary>
    public const double BadLot = 0.80;

    /// <summary>Factor on hold where the drying waits were cut short.</summary>
    public const double WaitsCut = 0.88;

    /// <summary>How often the waits are cut short, where there are coats to wait for.</summary>
    public const double ChanceWaitsCut = 0.12;

    /// <summary>How often somebody writes down whether they were kept.</summary>
    public const double ChanceWaitsNoted = 0.9;

    /// <summary>δ of life, per unit of a base row's width.</summary>
    public const double LifePractice = -0.08;

    /// <summary>s of life.</summary>
    public const double LifeLogScale = -0.10;

    /// <summary>How often a client rings on the day an edge comes up; else it is found at the next visit.</summary>
    public const double ChanceRings = 0.6;

    /// <summary>How often a client who did not ring remembers the day when asked.</summary>
    public const double ChanceRemembers = 0.5;

    /// <summary>How often a unit fails its inspection on arrival and is made again, in a lead time of its own.</summary>
    public const double RemakeRate = 0.05;

    /// <summary>Chances at each take-down: the worn unit tears, a waiting spare is found missing, a sound unit is put aside for a new style.</summary>
    public const double ChanceDamaged = 0.005;

    /// <inheritdoc cref="ChanceDamaged"/>
    public const double ChanceSpareLost = 0.012;

    /// <inheritdoc cref="ChanceDamaged"/>
    public const double ChancePutAside = 0.015;

    /// <summary>Days of hair, on heads, in drawers and on order, that a client of the middle sort wants ahead of them; the others spread about it (of ln).</summary>
    public const double CoverDays = 200;

    /// <inheritdoc cref="CoverDays"/>
    public const double CoverSpread = 0.2;

    /// <summary>Of a unit's life: how far past its end it can still be bonded when there is no other.</summary>
    public const double LastWear = 1.3;

    public static readonly DemoWorkshop North = new("Workshop North", LeadDays: 49, LeadSpread: 0.11, Life: 1);

    /// <summary>Its units last shorter.</summary>
    public static readonly DemoWorkshop Quay = new("Workshop Quay", LeadDays: 51, LeadSpread: 0.12, Life: 0.80);

    /// <summary>Half of its orders come three weeks or more after the first promise.</summary>
    public static readonly DemoWorkshop Alder = new("Workshop Alder", LeadDays: 78, LeadSpread: 0.13, Life: 1.06);

    /// <summary>In the demo, factor on the life of Alder's units that were ordered in so many of the last days.</summary>
    public const double AlderDecline = 0.72;

    /// <inheritdoc cref="AlderDecline"/>
    public const int AlderDeclinedBeforeDays = 330;

    public static IReadOnlyList<DemoWorkshop> Makers => [North, Quay, Alder];

    /// <summary>Every workshop promises eight weeks, whatever it takes.</summary>
    public const int PromisedDays = 56;

    /// <summary>The product of the bad lot is the one most bonds are made with; the lot is last quarter's.</summary>
    public static string BadLotCode(LocalDate today) => DemoPractice.LotOf(DemoPractice.Products[0], today.PlusMonths(-3));

    /// <summary>Factor of an adhesive on hold.</summary>
    public static double AdhesiveFactor(DemoProduct product) =>
        product.LotLetter switch
        {
            "B" => 1.07,
            "T" => 0.95,
            _ => 1,
        };

    public static bool HasPolyRim(string baseName) => baseName.Contains("poly", StringComparison.OrdinalIgnoreCase);

    /// <summary>All workshops close for the same two weeks, once behind us and once ahead.</summary>
    public static IReadOnlyList<DateInterval> WorkshopClosures(LocalDate today) =>
        [new(today.PlusDays(-172), today.PlusDays(-159)), new(today.PlusDays(33), today.PlusDays(46))];

    public static void AddWorkshopClosures(IEnumerable<Workshop> workshops, LocalDate today)
    {
        foreach (var workshop in workshops)
        {
            foreach (var closure in WorkshopClosures(today))
                workshop.AddClosure(Guid.CreateVersion7(), closure.Start, closure.End, "Workshop holiday");
        }
    }

    /// <summary>Of each client, once for hold and once for life: b, per unit of width, normal with this spread.</summary>
    public static readonly double ClientSpread = WindowPrior.FromWindow(LifeDistribution.Weibull, 28, 56).ClientFactor;

    /// <returns>Days a bond made on that day will hold.</returns>
    public static double DrawHold(Random random, DemoClient client, LocalDate on, LocalDate today, bool waitsCut)
    {
        var (from, to) = client.HoldWeeks;
        var effects =
            Math.Log(AdhesiveFactor(client.Adhesive))
            + (HasPolyRim(client.Kind.Base) ? Math.Log(PolyRim) : 0)
            + (client.Salon == DemoPractice.Pier ? Math.Log(SeaAir) : 0)
            + (DemoPractice.LotOf(client.Adhesive, on) == BadLotCode(today) ? Math.Log(BadLot) : 0)
            + (waitsCut ? Math.Log(WaitsCut) : 0);
        return Draw(random, from * 7, to * 7, HoldPractice + client.HoldEffect, effects, HoldLogScale);
    }

    /// <returns>Worn days until a take-down finds the unit worn out.</returns>
    public static double DrawLife(Random random, DemoClient client)
    {
        var (from, to) = client.Kind.LifeDays;
        return Draw(random, from, to, LifePractice + client.LifeEffect, Math.Log(client.Kind.Maker.Life), LifeLogScale);
    }

    /// <summary>Whether the drying waits were cut short; tape has none.</summary>
    public static bool DrawDryingCutShort(Random random, DemoProduct product) =>
        product.Attachment == Attachment.Liquid && random.Happens(ChanceWaitsCut);

    private static double Draw(Random random, double low, double high, double shift, double effects, double logScale)
    {
        var window = WindowPrior.FromWindow(LifeDistribution.Weibull, low, high);
        return Math.Exp(window.Centre + window.Width * shift + effects + Math.Exp(logScale) * window.Sigma * random.SmallestExtreme());
    }
}

/// <summary>What is true of a workshop.</summary>
/// <param name="LeadDays">Half of its orders take longer: days on which it works, from order to arrival.</param>
/// <param name="LeadSpread">Standard deviation of the logarithm of those days.</param>
/// <param name="Life">Factor on the worn days of its units.</param>
public sealed record DemoWorkshop(string Name, double LeadDays, double LeadSpread, double Life)
{
    /// <summary>Six days on the road, three until it is acknowledged, and some knotting.</summary>
    private const int LeastDays = 21;

    public int DrawLead(Random random) => Math.Max(LeastDays, (int)Math.Round(LeadDays * Math.Exp(LeadSpread * random.Normal())));

    /// <summary>The day that ends so many working days after the order.</summary>
    public static LocalDate AddWorkingDays(LocalDate ordered, int workingDays, IReadOnlyList<DateInterval> closures)
    {
        var day = ordered;
        while (workingDays > 0)
        {
            day = day.PlusDays(1);
            if (!closures.Any(c => c.Contains(day)))
                workingDays--;
        }
        return day;
    }
}
