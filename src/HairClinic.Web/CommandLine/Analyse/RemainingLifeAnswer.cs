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

    /// <summary>The one place where a unit's grades meet its life and age.</summary>
    /// <exception cref="Refusal">Next to no unit lasts so long; or grades are given.</exception>
    public static RemainingLifeAnswer Of(KnownLife life, double age, IReadOnlyList<GradedDay> grades)
    {
        if (grades.Count > 0)
            throw new Refusal("What grades say of the remaining life is not worked out here yet: ask without --grade and --grades.");
        var prediction = new LifePrediction(life.Population, ClientEffectNodes.For(life.Population), life.Place);
        var toAge = prediction.Survival(age);
        if (life.Window is not null && toAge < LeastOfWindow)
        {
            throw new Refusal(
                "By --low and --high fewer than one unit in a billion lasts {0} days: nothing can be said of one that did. Is --age right?",
                age
            );
        }
        return new RemainingLifeAnswer(
            life.Population.Distribution,
            age,
            toAge,
            days => prediction.SurvivalGiven(age, days),
            share => prediction.RemainingQuantile(age, share)
        );
    }
}
