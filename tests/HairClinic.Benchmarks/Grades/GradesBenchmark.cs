using HairClinic.Domain.Wear.Curves;
using HairClinic.Domain.Wear.Grades;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Grades;

/// <summary>What grades cost beside the closed form: a unit's curve, its row of the fit, its remaining life, and learning the link.</summary>
public static class GradesBenchmark
{
    private const int Units = 2000;
    private const int Centres = 30;
    private const int DaysInSight = 400;
    private static readonly WindowPrior Window = WindowPrior.FromWindow(LifeDistribution.Weibull, 182, 273);
    private static readonly double[] Places = [.. Enumerable.Range(0, Centres).Select(k => Window.Centre - 0.3 + 0.02 * k)];

    public static async Task RunAsync(Report report)
    {
        var dice = new Calibration.Dice(14);
        var units = Enumerable.Range(0, Units).Select(i => Draw(dice, ended: i % 2 == 0)).ToArray();
        var builder = new GradeCurveBuilder(GradeLink.Usual, Window);
        var curves = Array.ConvertAll(units, unit => builder.Build(unit.Grades));
        var rows = units.Select((unit, i) => GradedSpell.FromLife(unit.Life, curves[i])).ToArray();
        var usual = new LifePrediction(
            PopulationParameters.FromPriors(Window) with
            {
                ClientSpread = 0,
                PracticeVariance = 0,
            },
            ClientEffectNodes.For(PopulationParameters.FromPriors(Window) with { ClientSpread = 0, PracticeVariance = 0 }).Reduced(1),
            Window.Place
        );
        var (slopes, bends, values) = (new double[2], new double[3], new double[Centres]);
        var survival = new double[DaysInSight];
        var (bare, graded) = (0.0, 0.0);
        var times = await Rounds.ComputeAsync(
            15,
            Each(i => builder.Build(units[i].Grades)),
            Each(i => GradedSpell.FromLife(units[i].Life, curves[i])),
            Each(i =>
            {
                foreach (var place in Places)
                    bare += BareRow.LogLikelihood(units[i].Life, place, Window.Sigma, slopes, bends);
            }),
            Each(i =>
            {
                foreach (var place in Places)
                    graded += rows[i].LogLikelihood(place, Window.Sigma, slopes, bends);
            }),
            Each(i => rows[i].LogLikelihoods(Places, Window.Sigma, values)),
            Each(i => _ = new GradeWeights(curves[i], units[i].Grades.LastDay)),
            Each(_ => usual.SurvivalByDay(survival)),
            Each(i =>
            {
                usual.SurvivalByDay(survival);
                new GradeWeights(curves[i], 0).Weigh(survival);
            })
        );
        var each = times.Select(t => 1000 * Rounds.Median(t) / Units).ToArray();
        report.Say(
            $"{Units:N0} units, {units.Average(unit => unit.Grades.Looks):F1} looks each, half of them ended; processor time a unit"
        );
        report.Say($"curve p~             {each[0]:F1} µs");
        report.Say($"nodes of its row     {each[1]:F1} µs");
        report.Say($"closed row, {Centres} centres {each[2]:F2} µs with derivatives");
        report.Say(
            $"graded row, {Centres} centres {each[3]:F2} µs with derivatives, ratio {each[3] / each[2]:F1}; at once {each[4]:F2} µs"
        );
        report.Say($"p~ by day            {each[5]:F1} µs");
        report.Say(
            $"survival of {DaysInSight} days one effect, closed {each[6]:F2} µs, graded {each[7]:F2} µs, ratio {each[7] / each[6]:F1}"
        );
        report.Say($"check: {bare / Units / Centres:F6} {graded / Units / Centres:F6}");
        await LearnAsync(report, units);
    }

    private static async Task LearnAsync(Report report, GradedUnit[] units)
    {
        GradeLinkFit? fit = null;
        GradeGate? gate = null;
        var times = await Rounds.ComputeAsync(
            1,
            () =>
            {
                fit = GradeLinkFitter.Fit(units);
                return Task.CompletedTask;
            },
            () =>
            {
                gate = GradeGate.Weigh(units, fit!.Link);
                return Task.CompletedTask;
            }
        );
        report.Say(
            $"link from {fit!.Units:N0} units: {Rounds.Median(times[0]):F0} ms of processor time, {fit.Iterations} iterations, converged {fit.Converged}"
        );
        report.Say($"gate: {Rounds.Median(times[1]):F0} ms, {gate!.Ended:N0} ended, evidence {gate.Evidence:F1}");
    }

    private static Func<Task> Each(Action<int> work) =>
        () =>
        {
            for (var i = 0; i < Units; i++)
                work(i);
            return Task.CompletedTask;
        };

    private static GradedUnit Draw(Calibration.Dice dice, bool ended)
    {
        var x = Window.Centre + Window.ClientSpread * dice.Normal() + Window.Sigma * dice.Noise(LifeDistribution.Weibull);
        var (life, link) = (Math.Exp(x), GradeLink.Usual);
        var slight = Math.Exp(x + link.SlightShift + Math.Exp(link.SlightLogSpread) * dice.Normal());
        var fair = Math.Exp(x + link.FairShift + Math.Exp(link.FairLogSpread) * dice.Normal());
        var (looks, day, sound) = (new List<GradeLook>(), 0, 0);
        var until = ended ? double.PositiveInfinity : life * dice.Share();
        while ((day += dice.Whole(25, 33)) < Math.Min(life, until))
        {
            bool Read(double passed) => dice.Chance(0.07) ? day < passed : day >= passed;
            looks.Add(new GradeLook(sound = day, Read(slight), Read(fair)));
        }
        var spell = ended ? Spell.FromBounds(sound, day) : Spell.RightCensored(sound);
        return new(spell, Window, Window.Centre, Window.Sigma, UnitGrades.FromLooks(looks));
    }
}
