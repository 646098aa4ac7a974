using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Calibration;

/// <summary>A unit that is worn, or waits to be: what is true of it and what is known.</summary>
/// <param name="Life">Worn days it will last in all: true, and unseen.</param>
internal sealed record LivingUnit(Window Window, double[] Covariates, int WornDays, double Life);

/// <summary>The units of one client, and what their salon sees of them.</summary>
/// <remarks>
/// Units are inspected every 28 to 45 worn days and when they leave; a quarter of the earlier ones left for another reason
/// than wear (lost, style, the next one arrived). What is in wear today is not worn out.
/// </remarks>
internal sealed class UnitStory(Dice dice, LifeTruth truth, int client, bool otherWorkshop)
{
    private static readonly Window[] Windows = [new(182, 273), new(240, 365)];
    private readonly double effect = truth.Client(dice);
    private readonly Window window = dice.Of(Windows);
    private readonly double[] covariates = [otherWorkshop ? 1 : 0, dice.Chance(0.3) ? 1 : 0, dice.Chance(0.5) ? 1 : 0];

    public static IReadOnlyList<string> Names { get; } = ["other workshop", "bleached", "heat"];

    /// <summary>The practice has a factor row for bleach.</summary>
    public static IReadOnlyList<LifePrior> Priors { get; } =
    [LifePriors.UsualCoefficient, LifePrior.OfFactor(0.8), LifePriors.UsualCoefficient];

    public IEnumerable<Seen> Earlier(int count)
    {
        for (var unit = 0; unit < count; unit++)
            yield return See(Life(), dice.Chance(0.25) ? dice.Whole(30, 330) : int.MaxValue);
    }

    /// <summary>A unit in service: those found worn out meanwhile are seen as such and followed by a younger one.</summary>
    public LivingUnit InService(int wornUpTo, List<Seen> seen)
    {
        while (true)
        {
            var (age, life) = (dice.Whole(0, wornUpTo), Life());
            if (life > age)
            {
                seen.Add(new Seen(client, window, covariates, UnitLife.Of([], age), age, GoesOn: true));
                return new LivingUnit(window, covariates, age, life);
            }
            seen.Add(See(life, age));
            wornUpTo = 60;
        }
    }

    /// <summary>Not here yet.</summary>
    public LivingUnit Ordered() => new(window, covariates, 0, Life());

    private double Life() => truth.Days(dice, window, effect, covariates);

    private Seen See(double life, int until)
    {
        var inspections = new List<(double, int?)>();
        var worn = 0;
        do
        {
            worn = Math.Min(until, worn + dice.Whole(28, 45));
            inspections.Add((worn, worn >= life ? 3 : dice.Whole(0, 2)));
        } while (worn < until && worn < life);
        return new Seen(client, window, covariates, UnitLife.Of([.. inspections], worn), worn, false);
    }
}
