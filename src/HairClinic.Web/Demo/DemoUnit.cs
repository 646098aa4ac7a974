using HairClinic.Web.Demo.Truth;
using HairClinic.Web.Features.Binder;
using HairClinic.Web.Features.Binder.Sheets;

namespace HairClinic.Web.Demo;

/// <summary>One invented unit on its way from order to worn out.</summary>
/// <param name="remade">The day it came back made again; null where it passed its first inspection.</param>
/// <param name="life">Worn days until its structure is at grade 3.</param>
public sealed class DemoUnit(string serial, DemoUnitKind kind, LocalDate ordered, LocalDate arrived, LocalDate? remade, double life)
{
    private const int InspectedAfter = 1;

    /// <summary>The day it came to stay.</summary>
    public LocalDate Arrives => remade ?? arrived;

    /// <summary>Ready to be bonded.</summary>
    public LocalDate Ready => Arrives.PlusDays(3);

    public LocalDate FirstPromise => ordered.PlusDays(DemoParameters.PromisedDays);

    public int WornDays { get; set; }
    public LocalDate? FirstBonded { get; set; }
    public LocalDate? Gone { get; private set; }
    public UnitState? End { get; private set; }
    public string? Because { get; private set; }
    public bool OnHead { get; set; }

    public string Serial => serial;

    public DemoWorkshop Maker => kind.Maker;

    public bool IsInHouse(LocalDate day) => Gone is null && Ready <= day;

    /// <summary>Share of its life that is behind it after so many worn days.</summary>
    public double LifeFraction(int wornDays) => wornDays / life;

    /// <summary>Its worst structural grade: 3 from the end of its life on.</summary>
    public int StructuralGrade(int wornDays) =>
        LifeFraction(wornDays) switch
        {
            < 0.35 => 0,
            < 0.70 => 1,
            < 1 => 2,
            < 1.15 => 3,
            _ => 4,
        };

    /// <summary>Whether it is at the workshop to be made again today, and since when.</summary>
    public LocalDate? SentBackOn(LocalDate today) =>
        remade > today && arrived.PlusDays(InspectedAfter) < today ? arrived.PlusDays(InspectedAfter) : null;

    public void LeaveService(UnitState end, LocalDate on, string because) => (OnHead, End, Gone, Because) = (false, end, on, because);

    /// <summary>What an inspection writes down: one structural item shows its age, the others no more than that.</summary>
    public InspectionGrades DrawInspectionGrades(Random random, int wornDays)
    {
        var worst = StructuralGrade(wornDays);
        var items = Enumerable.Range(0, 4).Select(_ => Math.Max(0, worst - random.Next(3))).ToArray();
        items[random.Next(4)] = worst;
        return new(items[0], items[1], items[2], items[3], Math.Min(4, worst + random.Next(2)), Math.Max(0, worst - random.Next(2)));
    }

    /// <summary>What is known of it today.</summary>
    public UnitRow ToBinderRow(string clientCode, string salon, LocalDate today, SheetMoney price)
    {
        LocalDate? Until(LocalDate day) => day <= today ? day : null;
        var back = remade > today ? arrived : Arrives;
        var stays = back == Arrives;
        var dates = new UnitDates
        {
            SpecifiedOn = ordered.PlusDays(-2),
            OrderedOn = ordered,
            AcknowledgedOn = Until(ordered.PlusDays(3)),
            ShippedOn = Until(back.PlusDays(-6)),
            ArrivedOn = Until(back),
            InspectedOn = Until(back.PlusDays(InspectedAfter)),
            AcceptedOn = stays ? Until(back.PlusDays(InspectedAfter)) : null,
            PreparedOn = stays ? Until(Ready) : null,
            FirstBondedOn = FirstBonded,
            RetiredOn = Gone,
        };
        return new UnitRow
        {
            Serial = serial,
            ClientCode = clientCode,
            Workshop = kind.Workshop,
            Base = kind.Base,
            Kind = kind.Name,
            State = End ?? (OnHead ? UnitState.Bonded : dates.LastDatedState()),
            Dates = dates,
            Promises = [.. Promises(today)],
            // One that is being made again today goes back in the book.
            TimesRemade = remade <= today ? 1 : 0,
            RetiredBecause = Because,
            Place = dates.ArrivedOn is null || OnHead || End is UnitState.ReturnedToClient or UnitState.Lost ? null : salon,
            Price = price,
        };
    }

    // A remake has a promise of its own; of one still under way it is the book's to write it down.
    private IEnumerable<LocalDate> Promises(LocalDate today) =>
        Slipping(FirstPromise, arrived, today)
            .Concat(remade <= today ? Slipping(arrived.PlusDays(InspectedAfter + DemoParameters.PromisedDays), remade.Value, today) : []);

    // The workshop says that it will be late a week before it would have come, and never how late.
    private static IEnumerable<LocalDate> Slipping(LocalDate promised, LocalDate comes, LocalDate today)
    {
        yield return promised;
        while (comes > promised && promised.PlusDays(-7) <= today)
        {
            promised = promised.PlusDays(14);
            yield return promised;
        }
    }
}
