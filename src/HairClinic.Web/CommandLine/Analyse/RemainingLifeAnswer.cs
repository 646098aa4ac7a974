namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>How much longer one unit lasts, given all that is known of it.</summary>
/// <param name="ToAge">The chance that such a unit lasts to its age.</param>
/// <param name="Survival">The chance that it lasts so many worn days more.</param>
/// <param name="Quantile">The worn days from today by which a share of such units has worn out.</param>
public sealed record RemainingLifeAnswer(
    LifeDistribution Distribution,
    double Age,
    double ToAge,
    Func<double, double> Survival,
    Func<double, double> Quantile
)
{
    /// <summary>Below this a window's answer loses digits: it is laid on so many values of a client's effect, and these lie beyond.</summary>
    public const double LeastOfWindow = 1e-9;

    // With grades a life is laid on whole days, and not on more of them.
    private const int MostDaysGraded = 2_900;
    private const double NothingLeft = 1e-6;

    /// <summary>Looks behind it that said something.</summary>
    public int Looks { get; private init; }

    /// <summary>The one place where a unit's grades meet its life and age.</summary>
    /// <exception cref="Refusal">Next to no unit lasts so long; or with grades one may last for many years.</exception>
    public static RemainingLifeAnswer Of(KnownLife life, double age, IReadOnlyList<GradedDay> grades)
    {
        var prediction = new LifePrediction(life.Population, ClientEffectNodes.For(life.Population), life.Place);
        var toAge = prediction.Survival(age);
        if (life.Window is not null && toAge < LeastOfWindow)
        {
            throw new Refusal(
                "By --low and --high fewer than one unit in a billion lasts {0} days: nothing can be said of one that did. Is --age right?",
                age
            );
        }
        var seen = UnitGrades.FromLooks(grades.Select(g => GradeLook.FromGrades(g.WornDays, g.Grades)));
        if (seen.Looks > 0)
            prediction = prediction.WithGrades(age, Weights(life, prediction, age, seen));
        return new RemainingLifeAnswer(
            life.Population.Distribution,
            age,
            toAge,
            days => prediction.SurvivalGiven(age, days),
            share => prediction.RemainingQuantile(age, share)
        )
        {
            Looks = seen.Looks,
        };
    }

    // A life said by its parameters has no window of its own: four in five of such units end in it.
    private static GradeWeights Weights(KnownLife life, LifePrediction prediction, double age, UnitGrades seen)
    {
        if (prediction.SurvivalGiven(age, MostDaysGraded) > NothingLeft)
            throw new Refusal(
                "With grades a life is worked out day by day: a unit that may last {0} days more cannot be asked so.",
                MostDaysGraded
            );
        var window =
            life.Window ?? WindowPrior.FromWindow(life.Population.Distribution, prediction.Quantile(0.1), prediction.Quantile(0.9));
        return new GradeWeights(new GradeCurveBuilder(GradeLink.Usual, window).Build(seen), age);
    }
}
