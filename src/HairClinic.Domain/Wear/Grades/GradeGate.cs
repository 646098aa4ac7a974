using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Wear.Grades;

/// <summary>Whether a practice's grades tell enough of lives to be used: until they do, they say nothing.</summary>
/// <remarks>
/// From each look to the next, and from the last to what is known of the end: how much likelier what came was with the grades seen by
/// then, among lives that had lasted so long. Summed up that is the likelihood of what came, grade by grade, over that without grades; what
/// tells nothing loses by it, however often it says so. Comparing only whole lives would not do: that a look was made at all says that the
/// unit still wore, and grades that are always 0 repeat it.
/// </remarks>
/// <param name="Ended">Units with grades whose end is known.</param>
/// <param name="Evidence">The logarithm of that ratio.</param>
public sealed record GradeGate(int Ended, double Evidence)
{
    public const int FewestEnded = 15;

    public const double LeastEvidence = 4;

    public bool IsOpen => Ended >= FewestEnded && Evidence > LeastEvidence;

    /// <param name="units">The latest first: no more than <see cref="GradeLinkFitter.MostUnits"/> with grades are weighed.</param>
    public static GradeGate Weigh(IEnumerable<GradedUnit> units, GradeLink link)
    {
        var builders = new Dictionary<WindowPrior, GradeCurveBuilder>();
        var (ended, evidence) = (0, 0.0);
        foreach (var unit in units.Where(unit => unit.Grades.Looks > 0).Take(GradeLinkFitter.MostUnits))
        {
            if (!builders.TryGetValue(unit.Window, out var builder))
                builders[unit.Window] = builder = new(link, unit.Window);
            ended += unit.HasEnded ? 1 : 0;
            evidence += EvidenceOf(unit, builder);
        }
        return new(ended, evidence);
    }

    private static double EvidenceOf(GradedUnit unit, GradeCurveBuilder builder)
    {
        var (sum, days) = (0.0, unit.Grades.Days);
        for (var look = 0; look < days.Length; look++)
        {
            var curve = builder.Build(unit.Grades.Until(look + 1));
            var came = look + 1 < days.Length ? Spell.RightCensored(days[look + 1]) : unit.Life;
            sum += Factor(came, curve) - Factor(Spell.RightCensored(days[look]), curve);
        }
        return sum;

        double Factor(Spell life, GradeCurve curve) => GradedSpell.FromLife(life, curve).LogGradeFactor(unit.Centre, unit.Tau);
    }
}
