using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Grades;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Wear.Grades;

/// <summary>How grades come to be written, for units that are drawn.</summary>
public enum Writing
{
    /// <summary>Just as the model has it.</summary>
    AsModelled,

    /// <summary>20 % of looks are left out, 30 % of the rest are the time before's or one grade off.</summary>
    Honest,

    /// <summary>Anything from 0 to 2.</summary>
    Random,

    /// <summary>A form that came with zeros and was sent.</summary>
    Zero,

    /// <summary>The first look's, whatever it was, ever after.</summary>
    Copied,
}

/// <summary>Units drawn with a fixed seed: their lives as a window has them, looked at about every thirty worn days until the end was found.</summary>
internal static class Draws
{
    public static double Normal(Random dice) => Math.Sqrt(-2 * Math.Log(1 - dice.NextDouble())) * Math.Cos(2 * Math.PI * dice.NextDouble());

    public static bool Entry(bool passed, bool? before, GradeLink link, Random dice) =>
        before is { } last && dice.NextDouble() < link.Copied ? last
        : dice.NextDouble() < link.Misread ? !passed
        : passed;

    /// <param name="ended">The share that is watched to the end; the others are still worn, at any age up to it.</param>
    /// <returns>Each with its true life, in worn days.</returns>
    public static List<(GradedUnit Unit, double Life)> Units(
        WindowPrior window,
        int count,
        Writing writing,
        int seed,
        double ended = 0.6,
        GradeLink? truth = null
    )
    {
        var dice = new Random(seed);
        return [.. Enumerable.Range(0, count).Select(_ => Unit(window, writing, ended, truth ?? GradeLink.Usual, dice))];
    }

    private static (GradedUnit, double) Unit(WindowPrior window, Writing writing, double ended, GradeLink truth, Random dice)
    {
        var x = Life(window, dice);
        // What the grades follow: of every tenth unit not its own life, where that is believed.
        var warned = writing == Writing.AsModelled && dice.NextDouble() < 0.1 ? Life(window, dice) : x;
        var stretch = Math.Exp(truth.Unevenness * Normal(dice));
        var slight = Math.Exp(warned + truth.SlightShift * stretch + Math.Exp(truth.SlightLogSpread) * Normal(dice));
        var fair = Math.Exp(warned + truth.FairShift * stretch + Math.Exp(truth.FairLogSpread) * Normal(dice));
        var life = Math.Exp(x);
        var watched = dice.NextDouble() < ended ? double.PositiveInfinity : life * dice.NextDouble();
        var (looks, sound, day) = (new List<GradeLook>(), 0.0, 0.0);
        Spell spell;
        while (true)
        {
            day += Math.Round(30 + 5 * Normal(dice));
            if (day > watched)
            {
                spell = Spell.RightCensored(sound);
                break;
            }
            if (writing == Writing.Honest && dice.NextDouble() < 0.2)
                continue;
            if (day >= life)
            {
                looks.Add(new GradeLook(day, true, true, WornOut: true));
                spell = Spell.FromBounds(sound, day);
                break;
            }
            looks.Add(Look(day, day >= slight, day >= fair, looks.Count > 0 ? looks[^1] : null, writing, truth, dice));
            sound = day;
        }
        // The fit without grades knows the client's effect only roughly.
        return (new(spell, window, window.Centre, 1.2 * window.Sigma, UnitGrades.FromLooks(looks)), life);
    }

    private static GradeLook Look(double day, bool slight, bool fair, GradeLook? before, Writing writing, GradeLink truth, Random dice)
    {
        if (writing == Writing.AsModelled)
            return new(day, Entry(slight, before?.Slight, truth, dice), Entry(fair, before?.Fair, truth, dice));
        var last = before is { } look ? Grade(look) : (int?)null;
        var grade = (slight ? 1 : 0) + (fair ? 1 : 0);
        var off = dice.NextDouble() < 0.3 && writing == Writing.Honest;
        if (off)
            grade = dice.NextDouble() < 0.5 ? last ?? grade : Math.Clamp(grade + (dice.NextDouble() < 0.5 ? 1 : -1), 0, 2);
        grade = writing switch
        {
            Writing.Zero => 0,
            Writing.Random => dice.Next(3),
            Writing.Copied => last ?? dice.Next(3),
            _ => grade,
        };
        return new(day, grade >= 1, grade >= 2);
    }

    private static int Grade(GradeLook look) => (look.Slight == true ? 1 : 0) + (look.Fair == true ? 1 : 0);

    // As a client of whom nothing is known has it.
    private static double Life(WindowPrior window, Random dice) =>
        window.Centre
        + window.ClientSpread * Normal(dice)
        + window.PracticeSpread * Normal(dice)
        + window.Sigma * (window.Distribution == LifeDistribution.Weibull ? Math.Log(-Math.Log(1 - dice.NextDouble())) : Normal(dice));
}
