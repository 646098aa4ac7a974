using System.CommandLine;

namespace HairClinic.Web.CommandLine.Analyse;

/// <summary>What is known of a unit's life: a fit's two numbers, a Weibull's, or a window before anything was seen.</summary>
public sealed class LifeOptions
{
    private readonly Option<string> _distribution = new("--distribution")
    {
        Description = "weibull or lognormal.",
        DefaultValueFactory = _ => "weibull",
    };

    private readonly NumberOption _location = new(
        "--location",
        "Of ln(life in worn days): a fit's (Intercept), with what the unit's covariates add.",
        -100,
        100
    );

    private readonly NumberOption _scale = new("--scale", "Of ln(life in worn days): a fit's scale.", 1e-6, 20);
    private readonly WeibullOptions _weibull = new(required: false);
    private readonly WindowOptions _window = new("--low", "--high");

    public LifeOptions() => _distribution.AcceptOnlyFromAmong("weibull", "lognormal");

    public IEnumerable<Option> All =>
        [
            _distribution,
            _location.Option,
            _scale.Option,
            _weibull.Shape.Option,
            _weibull.Scale.Option,
            _window.Low.Option,
            _window.High.Option,
        ];

    /// <exception cref="Refusal">It is said in no way, half, or in two ways.</exception>
    public KnownLife Read(ParseResult result)
    {
        var distribution = result.GetValue(_distribution) == "weibull" ? LifeDistribution.Weibull : LifeDistribution.LogNormal;
        (NumberOption First, NumberOption Second)[] ways =
        [
            (_location, _scale),
            (_weibull.Shape, _weibull.Scale),
            (_window.Low, _window.High),
        ];
        var said = ways.Where(way => way.First.IsSaid(result) || way.Second.IsSaid(result)).ToList();
        if (said is not [var (first, second)])
            throw new Refusal("Say its life in one way: --location and --scale, --life-shape and --life-scale, or --low and --high.");
        if (!first.IsSaid(result) || !second.IsSaid(result))
            throw new Refusal("{0} and {1} go together.", first.Option.Name, second.Option.Name);
        if (first == _window.Low)
            return KnownLife.FromWindow(_window.Read(result, distribution));
        if (first == _location)
            return KnownLife.FromParameters(distribution, first.Number(result), second.Number(result));
        if (distribution != LifeDistribution.Weibull)
            throw new Refusal("--life-shape is a Weibull's: of a log-normal life say --location and --scale.");
        return KnownLife.FromParameters(distribution, Math.Log(second.Number(result)), 1 / first.Number(result));
    }
}

/// <summary>A life as the engines take it.</summary>
/// <param name="Window">Where it is an unknown client's, by a window alone.</param>
public sealed record KnownLife(PopulationParameters Population, RowLocationScale Place, WindowPrior? Window)
{
    public static KnownLife FromParameters(LifeDistribution distribution, double location, double scale) =>
        new(new PopulationParameters(distribution, Math.Log(scale), [], location, 0, 0, 0), RowLocationScale.Plain, null);

    public static KnownLife FromWindow(WindowPrior window) => new(PopulationParameters.FromPriors(window), window.Place, window);
}
