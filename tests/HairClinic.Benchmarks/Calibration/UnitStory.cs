using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Calibration;

/// <summary>A unit that is worn, or waits to be: what is true of it and what is known.</summary>
/// <param name="Covariates">As they are from now on.</param>
/// <param name="Life">Worn days it will last in all: true, and unseen.</param>
/// <param name="Known">Its rows in the book.</param>
internal sealed record LivingUnit(Window Window, double[] Covariates, int WornDays, double Life, IReadOnlyList<Seen> Known);

/// <summary>The units of one client, and what their salon sees of them.</summary>
/// <remarks>
/// Units are inspected every 28 to 45 worn days and when they leave; a quarter of the earlier ones left for another reason
/// than wear (lost, style, the next one arrived). One in five is repaired between its 40th and 150th worn day if it lasts so long: from
/// then on it wears by another curve. What is in wear today is not worn out.
/// </remarks>
internal sealed class UnitStory(Dice dice, LifeTruth truth, int client, bool otherWorkshop)
{
    private static readonly Window[] Windows = [new(182, 273), new(240, 365)];
    private readonly double _effect = truth.Client(dice);
    private readonly Window _window = dice.Of(Windows);
    private readonly double[] _covariates = [otherWorkshop ? 1 : 0, dice.Chance(0.3) ? 1 : 0, dice.Chance(0.5) ? 1 : 0];

    public static IReadOnlyList<string> Names { get; } = ["other workshop", "bleached", "heat", "repaired"];

    /// <summary>The practice has a factor row for bleach.</summary>
    public static IReadOnlyList<NormalPrior> Priors { get; } =
    [LifePriors.UsualCoefficient, NormalPrior.OfFactor(0.8), LifePriors.UsualCoefficient, LifePriors.UsualCoefficient];

    public IEnumerable<Seen> Earlier(int count) =>
        Enumerable.Range(0, count).SelectMany(_ => See(Draw(dice.Chance(0.25) ? dice.Whole(30, 330) : int.MaxValue)));

    /// <summary>A unit in service: those found worn out meanwhile are seen as such and followed by a younger one.</summary>
    public LivingUnit InService(int wornUpTo, List<Seen> seen)
    {
        while (true)
        {
            var unit = Draw(dice.Whole(0, wornUpTo));
            var known = unit.Life > unit.Until ? Rows([], unit.Until, unit.RepairedAt, goesOn: true) : See(unit);
            seen.AddRange(known);
            if (unit.Life > unit.Until)
                return new LivingUnit(_window, With(unit.RepairedAt.Length), unit.Until, unit.Life, known);
            wornUpTo = 60;
        }
    }

    /// <summary>Not here yet.</summary>
    public LivingUnit Ordered() => new(_window, With(0), 0, Draw(0).Life, []);

    private double[] With(double repaired) => [.. _covariates, repaired];

    // What befalls a unit until it leaves, or until today.
    private (double Life, int Until, double[] RepairedAt) Draw(int until)
    {
        var life = truth.Days(dice, _window, _effect, With(0));
        var repaired = dice.Whole(40, 150);
        return !dice.Chance(0.2) || repaired >= until || repaired >= life
            ? (life, until, [])
            : (truth.Days(dice, _window, _effect, With(1), after: repaired), until, [repaired]);
    }

    private List<Seen> See((double Life, int Until, double[] RepairedAt) unit)
    {
        var inspections = new List<UnitLook>();
        var worn = 0;
        do
        {
            worn = Math.Min(unit.Until, worn + dice.Whole(28, 45));
            inspections.Add(new UnitLook(worn, worn >= unit.Life));
            // The grade below 3 that was drawn here says no more than that; without the draw all that follows would be another story.
            if (worn < unit.Life)
                dice.Whole(0, 2);
        } while (worn < unit.Until && worn < unit.Life);
        return Rows(inspections, worn, unit.RepairedAt, goesOn: false);
    }

    private List<Seen> Rows(List<UnitLook> inspections, int worn, double[] repairedAt, bool goesOn)
    {
        // The belief reads a repaired unit as two rows, the later one entered late.
        var (life, repaired) = UnitLifeBuilder.FromInspectionsAndRepairs(inspections.ToArray(), worn, repairedAt);
        return repaired switch
        {
            null => [new Seen(client, _window, With(0), life, worn, goesOn)],
            0 => [new Seen(client, _window, With(1), life, worn, goesOn)],
            { } at =>
            [
                new Seen(client, _window, With(0), Spell.RightCensored(at), worn, goesOn, IsContinued: true),
                new Seen(client, _window, With(1), life, worn, goesOn, at),
            ],
        };
    }
}
