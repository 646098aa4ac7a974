using HairClinic.Web.Demo.Truth;

namespace HairClinic.Web.Demo;

/// <summary>One invented client's units: what is in the drawer and on order, and when there is too little of it.</summary>
/// <param name="declinesFrom">Alder's units ordered from then on are worse; null where no workshop declines.</param>
public sealed class DemoUnitSupply(
    DemoClient client,
    Random random,
    IReadOnlyList<DateInterval> closures,
    Func<string> nextSerial,
    LocalDate? declinesFrom = null
)
{
    private static readonly string[] Endings = ["shed at the front", "base torn at the rim", "knots came loose", "gaps at the temples"];

    private readonly List<DemoUnit> _units = [];

    public IReadOnlyList<DemoUnit> Units => _units;

    /// <summary>What a stylist expects of a new unit: the middle of the base's row, in worn days.</summary>
    private double ExpectedLife => Math.Sqrt((double)client.Kind.LifeDays.From * client.Kind.LifeDays.To);

    /// <summary>Orders until there is as much hair ahead as this client wants.</summary>
    /// <param name="worn">Counts for what is left of it.</param>
    public void OrderAhead(LocalDate day, DemoUnit? worn)
    {
        var ahead = _units.Where(u => u.Gone is null).Sum(u => Left(u, u == worn));
        for (; ahead < client.CoverDays; ahead += ExpectedLife)
            Order(day);
    }

    private DemoUnit Order(LocalDate day)
    {
        var arrived = DemoWorkshop.AddWorkingDays(day, client.Kind.Maker.DrawLead(random), closures);
        LocalDate? remade = random.Happens(DemoParameters.RemakeRate)
            ? DemoWorkshop.AddWorkingDays(arrived.PlusDays(1), client.Kind.Maker.DrawLead(random), closures)
            : null;
        var worse = client.Kind.Maker == DemoParameters.Alder && day >= declinesFrom ? DemoParameters.AlderDecline : 1;
        _units.Add(new DemoUnit(nextSerial(), client.Kind, day, arrived, remade, worse * DemoParameters.DrawLife(random, client)));
        return _units[^1];
    }

    /// <summary>The next that is or will be ready; ordered now where there is none.</summary>
    public DemoUnit NextOrNewlyOrdered(LocalDate day) =>
        _units.Where(u => u.Gone is null).OrderBy(u => u.Ready).FirstOrDefault() ?? Order(day);

    /// <summary>After a take-down: the unit that goes on, worn as before or its spare; null where there is none fit to be bonded.</summary>
    public DemoUnit? ChooseAfterTakeDown(LocalDate day, DemoUnit worn)
    {
        foreach (var missing in _units.Where(u => u != worn && u.IsInHouse(day)).ToList())
        {
            if (random.Happens(DemoParameters.ChanceSpareLost))
                missing.LeaveService(UnitState.Lost, day, "not in the drawer");
        }
        var spare = _units.Where(u => u != worn && u.IsInHouse(day)).OrderBy(u => u.Ready).FirstOrDefault();
        if (random.Happens(DemoParameters.ChanceDamaged))
            worn.LeaveService(UnitState.Damaged, day, "torn at take-down");
        else if (
            worn.StructuralGrade(worn.WornDays) >= 3
            && (spare is not null || worn.LifeFraction(worn.WornDays) > DemoParameters.LastWear)
        )
            worn.LeaveService(
                random.Happens(0.05) ? UnitState.EmergencySpare : UnitState.Retired,
                day,
                Endings[random.Next(Endings.Length)]
            );
        else if (spare is not null && random.Happens(DemoParameters.ChancePutAside))
            worn.LeaveService(UnitState.Retired, day, "still sound, style changed");
        return worn.Gone is null ? worn : spare;
    }

    private double Left(DemoUnit unit, bool isWorn) =>
        !isWorn ? ExpectedLife
        : unit.StructuralGrade(unit.WornDays) >= 3 ? 0
        : Math.Max(0.15 * ExpectedLife, ExpectedLife - unit.WornDays);
}
