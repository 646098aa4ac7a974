using HairClinic.Web.Language;
using HairClinic.Web.Learning;
using NodaTime.Text;

namespace HairClinic.Web.Features.Clients;

// What is worked out from what was read.
public sealed partial class NextUnit
{
    private const int LatelyDays = 120;
    private const int MostOfShelf = 3;

    private static double[] CurveOf(ReorderRule rule, ClientReorderInput order, ReorderOutlook outlook)
    {
        // Past the day far enough that the rise can be seen, and a year at most.
        var days = new double[Math.Clamp((outlook.Answer.ReorderInDays ?? 0) + 90, 120, 365)];
        rule.GapByOrderDay(order.Question, days);
        return days;
    }

    // The one that helps most first; each by its own kind, whatever the client wears else.
    private static List<StockUnit> HelpOf(
        IReadOnlyList<HairSystem> shelf,
        ReorderRule rule,
        ClientReorderInput order,
        ClientOutlook known
    ) =>
        [
            .. shelf
                .GroupBy(u => u.UnitKindId)
                .SelectMany(kind =>
                {
                    var one = known.Book.NewUnitOf(known.Units, order, kind.Key);
                    var then = ReorderPlanner.LargerGapChance(rule, order.Question with { InHand = [.. order.Question.InHand, one] });
                    return kind.Select(u => new StockUnit(u.Id, u.Serial, known.Book.Kinds[kind.Key].Name, then));
                })
                .OrderBy(u => u.Then)
                .ThenBy(u => u.Serial, StringComparer.Ordinal)
                .Take(MostOfShelf),
        ];

    private static UnitLeft UnitOf(ClientOutlook known, Guid id)
    {
        var unit = known.Units.Units.Single(u => u.Id == id);
        var (life, worn) = known.Case!.Left[id];
        LocalDate Day(double chance) => known.Today.PlusDays(life.WholeDayQuantileGiven(worn, chance));
        return new UnitLeft(unit.Serial, unit.State == UnitState.Bonded, Day(0.1), Day(0.5), Day(0.9));
    }

    private static UnitComing FlightOf(ClientOutlook known, Guid id)
    {
        var unit = known.Units.Units.Single(u => u.Id == id);
        var workshop = known.Book.Kinds[unit.UnitKindId].WorkshopId is { } w ? known.Book.Workshops[w].Name : null;
        var promises = unit.Promises.OrderBy(p => p.Number).ToList();
        var (early, late) = known.Orders.ArrivalRange(unit);
        return new UnitComing(
            unit.Serial,
            workshop,
            unit.Dates.OrderedOn,
            promises.FirstOrDefault()?.PromisedFor,
            promises.LastOrDefault()?.PromisedFor,
            early,
            late
        );
    }

    private static IEnumerable<UnitGone> GoneLately(IEnumerable<HairSystem> units, LocalDate today) =>
        units
            .Where(u =>
                u.State is UnitState.Lost or UnitState.Damaged && u.Dates.RetiredOn is { } gone && gone >= today.PlusDays(-LatelyDays)
            )
            .OrderBy(u => u.Dates.RetiredOn)
            .Select(u => new UnitGone(u.Serial, u.State, u.Dates.RetiredOn!.Value));

    private static Tried TriedOf(ClientOutlook known, ClientReorderInput order, ReorderOutlook outlook) =>
        new(order, outlook, known.Book.Kinds[order.UnitKindId].UsualLeadTime(), known.Book.Kinds[order.UnitKindId].LeadHalfDays);

    // In the order in which they help; what is only hoped for comes last.
    private static List<RemedyEffect> RemediesOf(
        ReorderRule rule,
        ClientReorderInput order,
        ClientOutlook known,
        IReadOnlyList<HairSystem> shelf
    )
    {
        if (known.Outlook is not { AtRisk: true } outlook)
            return [];
        var tried = TriedOf(known, order, outlook);
        var remedies = new List<RemedyEffect>();
        var units = known.Units.Units;
        var spare = order.InHand.Select(id => units.Single(u => u.Id == id)).FirstOrDefault(u => u.State != UnitState.Bonded);
        if (spare is not null)
            remedies.Add(new RemedyEffect(RemedyKind.Spare, spare.Serial) { UnitId = spare.Id });
        remedies.AddRange(
            order.Emergency.Take(1).Select(id => new RemedyEffect(RemedyKind.WornSpare, units.Single(u => u.Id == id).Serial))
        );
        remedies.Add(
            new RemedyEffect(RemedyKind.OffTheShelf, null)
            {
                Stock = HelpOf(shelf, rule, order, known),
                Then = tried.WorstGapChance(new ReorderScenario(ExtraUnits: 1), rule),
            }
        );
        if (order.InHand.Count > 0)
        {
            var days = Enumerable
                .Range(1, 16)
                .Select(w => 7 * w)
                .FirstOrDefault(d => tried.WorstGapChance(new ReorderScenario(RepairDays: d), rule) <= outlook.Alpha);
            remedies.Add(new RemedyEffect(RemedyKind.Repair, null) { Days = days == 0 ? null : days, UnitId = spare?.Id });
        }
        if (order.InFlight.Count == 0)
        {
            var half = Math.Max(1, known.Book.Kinds[order.UnitKindId].LeadHalfDays / 2);
            remedies.Add(
                new RemedyEffect(RemedyKind.Rush, null)
                {
                    Days = half,
                    Then = tried.WorstGapChance(new ReorderScenario(RushHalfDays: half), rule),
                }
            );
        }
        else
        {
            remedies.Add(
                new RemedyEffect(RemedyKind.AskTheWorkshop, units.Single(u => u.Id == order.InFlight[0]).Serial)
                {
                    UnitId = order.InFlight[0],
                }
            );
        }
        return remedies;
    }

    private static string NoteOf(HairSystem last) =>
        string.Join(
            "; ",
            last.Repairs.Where(r => r.DoneOn is not null)
                .OrderBy(r => r.DoneOn)
                .Select(r =>
                    $"{EnumWords.InEnglish(r.Kind)} {LocalDatePattern.Iso.Format(r.DoneOn!.Value)}{(r.Note is null ? "" : ": " + r.Note)}"
                )
                .Append(last.RetiredBecause)
                .Where(n => !string.IsNullOrWhiteSpace(n))
        );
}

/// <summary>Something that can be done about a gap that threatens.</summary>
/// <param name="What">The unit or units it is about; null where there is none.</param>
public sealed record RemedyEffect(RemedyKind Kind, string? What)
{
    /// <summary>The days it takes or buys; null where none would be enough.</summary>
    public int? Days { get; init; }

    /// <summary>The chance of a gap that is left; off the shelf with one of the kind that would be ordered.</summary>
    public double? Then { get; init; }

    /// <summary>The client's unit it is about, where there is one to open.</summary>
    public Guid? UnitId { get; init; }

    /// <summary>Units of nobody's that could be theirs at once; the one that helps most comes first.</summary>
    public IReadOnlyList<NextUnit.StockUnit> Stock { get; init; } = [];
}

/// <summary>In the order in which they help.</summary>
public enum RemedyKind
{
    Spare,

    /// <summary>Kept for an emergency, or found worn out.</summary>
    WornSpare,

    /// <summary>A ready-made unit.</summary>
    OffTheShelf,

    Repair,

    /// <summary>A hope, not a date.</summary>
    Rush,

    AskTheWorkshop,
}
