using System.Text.Json;
using MathNet.Numerics.Distributions;

namespace HairClinic.Web.Tests.CommandLine.Analyse;

/// <summary>The distribution given survival: against closed forms, R and mpmath.</summary>
public sealed class RemainingLifeVerbTests
{
    private const string Life = "remaining --life-shape 7.6 --life-scale 260 --age 100";

    // λ·((a/λ)^k − ln(1 − p))^(1/k) − a, and S(a + t) / S(a).
    [Theory]
    [InlineData(7.6, 260, 0)]
    [InlineData(7.6, 260, 100)]
    [InlineData(7.6, 260, 400)]
    [InlineData(7.6, 260, 0.001)]
    [InlineData(1, 90, 45)]
    [InlineData(0.5, 30, 300)]
    [InlineData(40, 200, 198)]
    public void Of_a_weibull_life_it_is_the_closed_form(double shape, double scale, double age)
    {
        var words = FormattableString.Invariant($"--life-shape {shape} --life-scale {scale} --age {age} --at 0,1 --at 30.5,500");
        var worn = Math.Pow(age / scale, shape);
        double Quantile(double p) => scale * Math.Pow(worn - Math.Log(1 - p), 1 / shape) - age;

        var analysis = Analysis.Of($"remaining {words}".Split(' '));

        Assert.Equal((0, ""), (analysis.Code, analysis.Errors));
        Assert.Equal(Math.Exp(-worn), analysis.Number("survivalToAge"), 1e-12);
        Assert.Equal(1, analysis.Number("median") / Quantile(0.5), 1e-8);
        Assert.Equal(1, analysis.Number("band", "from") / Quantile(0.1), 1e-7);
        Assert.Equal(1, analysis.Number("band", "to") / Quantile(0.9), 1e-8);
        foreach (var (days, i) in new[] { 0, 1, 30.5, 500 }.Select((days, i) => (days, i)))
        {
            var at = analysis.Json.GetProperty("survival")[i];
            Assert.Equal(days, at.GetProperty("days").GetDouble());
            Assert.Equal(Math.Exp(worn - Math.Pow((age + days) / scale, shape)), at.GetProperty("survival").GetDouble(), 1e-11);
        }
    }

    [Fact]
    public void A_fits_two_numbers_say_the_same_as_shape_and_scale()
    {
        var words = FormattableString.Invariant($"remaining --location {Math.Log(260):R} --scale {1 / 7.6:R} --age 100");

        Assert.Equal(Analysis.Of(Life.Split(' ')).Number("median"), Analysis.Of(words.Split(' ')).Number("median"), 1e-9);
    }

    // R 4.2.2 (order_timing.csv of the reference tables): P(remaining life > 42 | survived to age) of weibull(2.5; 180).
    [Theory]
    [InlineData(0, 0.9740436460)]
    [InlineData(60, 0.8372993442)]
    [InlineData(100, 0.7241797385)]
    [InlineData(140, 0.6098731593)]
    public void A_fixed_lead_time_is_outlasted_with_the_published_chance(int age, double chance)
    {
        var analysis = Analysis.Of($"remaining --life-shape 2.5 --life-scale 180 --age {age} --at 42".Split(' '));

        Assert.Equal(chance, analysis.Json.GetProperty("survival")[0].GetProperty("survival").GetDouble(), 1e-9);
    }

    // exp(μ + σ·z) with Q(z) = (1 − p)·Q(z_a).
    [Theory]
    [InlineData(5, 0.3, 0)]
    [InlineData(5, 0.3, 120)]
    [InlineData(5, 0.3, 400)]
    public void Of_a_log_normal_life_it_is_the_closed_form(double location, double scale, double age)
    {
        var words = FormattableString.Invariant(
            $"remaining --distribution lognormal --location {location} --scale {scale} --age {age} --at 60"
        );
        double Later(double days) => Normal.CDF(0, 1, -(Math.Log(days) - location) / scale);
        var toAge = age == 0 ? 1 : Later(age);

        var analysis = Analysis.Of(words.Split(' '));

        Assert.Equal(toAge, analysis.Number("survivalToAge"), 1e-12);
        Assert.Equal(0.5, Later(age + analysis.Number("median")) / toAge, 1e-8);
        Assert.Equal(0.9, Later(age + analysis.Number("band", "from")) / toAge, 1e-8);
        Assert.Equal(0.1, Later(age + analysis.Number("band", "to")) / toAge, 1e-8);
        Assert.Equal(Later(age + 60) / toAge, analysis.Json.GetProperty("survival")[0].GetProperty("survival").GetDouble(), 1e-9);
    }

    // An unknown client's ln T is the sum of three normals: normal, with the window's ends as its tenth and ninetieth of a hundred.
    [Fact]
    public void Of_a_log_normal_window_it_is_the_closed_form_too()
    {
        var (centre, spread) = ((Math.Log(182) + Math.Log(273)) / 2, Math.Log(273.0 / 182) / (2 * Normal.InvCDF(0, 1, 0.9)));
        double Later(double days) => Normal.CDF(0, 1, -(Math.Log(days) - centre) / spread);

        var analysis = Analysis.Of("remaining --distribution lognormal --low 182 --high 273 --age 150 --at 60".Split(' '));

        Assert.Equal(0.5, Later(150 + analysis.Number("median")) / Later(150), 1e-5);
        Assert.Equal(Later(210) / Later(150), analysis.Json.GetProperty("survival")[0].GetProperty("survival").GetDouble(), 1e-5);
    }

    // mpmath 1.3, 30 digits: the normal mixture of Weibull lives on two thousand nodes.
    [Theory]
    [InlineData(200, 0.787039, 0.8868939829)]
    [InlineData(300, 0.0208351, 0.501637831)]
    [InlineData(400, 2.46458e-6, 0.3273856271)]
    public void Of_a_window_it_is_an_unknown_clients(int age, double toAge, double tenDays)
    {
        var analysis = Analysis.Of($"remaining --low 182 --high 273 --age {age} --at 10".Split(' '));

        Assert.Equal(1, analysis.Number("survivalToAge") / toAge, 1e-5);
        Assert.Equal(tenDays, analysis.Json.GetProperty("survival")[0].GetProperty("survival").GetDouble(), 1e-9);
    }

    [Fact]
    public void A_new_units_window_is_told_back()
    {
        var analysis = Analysis.Of("remaining --low 28 --high 56 --age 0".Split(' '));

        Assert.Equal(28, analysis.Number("band", "from"), 1e-3);
        Assert.Equal(56, analysis.Number("band", "to"), 1e-3);
        Assert.Equal(41.253, analysis.Number("median"), 5e-3);
    }

    [Theory]
    [InlineData("--life-shape 7.6 --life-scale 260 --age 400", true)]
    [InlineData("--life-shape 7.6 --life-scale 260 --age 1e9", true)]
    [InlineData("--location 5 --scale 1e-6 --age 1e9", true)]
    [InlineData("--distribution lognormal --location 5 --scale 1e-6 --age 1e9", true)]
    [InlineData("--life-shape 7.6 --life-scale 260 --age 300", false)]
    public void An_age_past_any_life_leaves_next_to_nothing_and_is_doubted(string words, bool doubted)
    {
        var analysis = Analysis.Of($"remaining {words}".Split(' '));

        Assert.Equal(doubted ? 1 : 0, analysis.Json.GetProperty("notes").GetArrayLength());
        Assert.InRange(analysis.Number("band", "to"), 0, doubted ? 15 : 60);
    }

    [Theory]
    [InlineData("--age 100", "Say its life in one way: --location and --scale, --life-shape and --life-scale, or --low and --high.")]
    [InlineData(
        "--age 100 --low 3 --high 4 --scale 1",
        "Say its life in one way: --location and --scale, --life-shape and --life-scale, or --low and --high."
    )]
    [InlineData("--age 100 --location 5", "--location and --scale go together.")]
    [InlineData("--age 100 --high 5", "--low and --high go together.")]
    [InlineData("--age 100 --low 28 --high 28", "A window's --high must be 1.001 to 1000000 times its --low: they are 28 and 28.")]
    [InlineData(
        "--age 100 --life-shape 3 --life-scale 90 --distribution lognormal",
        "--life-shape is a Weibull's: of a log-normal life say --location and --scale."
    )]
    [InlineData(
        "--low 182 --high 273 --age 900",
        "By --low and --high fewer than one unit in a billion lasts 900 days: nothing can be said of one that did. Is --age right?"
    )]
    [InlineData("--low 182 --high 273 --age -1", "--age is -1: it must lie between 0 and 1000000000.")]
    [InlineData("--low 182 --high 273", "Option '--age' is required.")]
    [InlineData("--low 182 --high 273 --age 9 --at 10,", "--at is \"\", which is no number.")]
    [InlineData("--low 182 --high 273 --age 9 --at 10,-1", "--at is -1: it must lie between 0 and 1000000000.")]
    public void What_makes_no_sense_is_refused_in_a_sentence(string words, string sentence) =>
        AssertRefused(sentence, $"remaining {words}");

    [Theory]
    [InlineData("120:1,0,2,1", "--grade 120:1,0,2,1: day 120 lies after the --age of 100 days.")]
    [InlineData("0:1,0,2,1", "--grade 0:1,0,2,1: its day is 0: worn days until a take-down are above 0.")]
    [InlineData("60:1,0,3,1", "--grade 60:1,0,3,1: grade 3 means that the unit was worn out on day 60: nothing remains.")]
    [InlineData(
        "60:1,0,5,1",
        "--grade 60:1,0,5,1: \"5\" is no grade: they run from 0, as new, to 4, unfit, and are empty where nobody looked."
    )]
    [InlineData(
        "60:1,0,1.5,1",
        "--grade 60:1,0,1.5,1: \"1.5\" is no grade: they run from 0, as new, to 4, unfit, and are empty where nobody looked."
    )]
    [InlineData("60:1,0,2", "--grade is \"60:1,0,2\", which is not DAY:shedding,knots,base,fit, as in 120:1,0,2,1.")]
    [InlineData("1,0,2,1", "--grade is \"1,0,2,1\", which is not DAY:shedding,knots,base,fit, as in 120:1,0,2,1.")]
    [InlineData("soon:1,0,2,1", "The day of --grade is \"soon\", which is no number.")]
    [InlineData("60:1,0,2,1 --grade 60:,,,", "Grades of day 60 are given twice.")]
    public void A_grade_is_read_and_never_left_out(string grade, string sentence) => AssertRefused(sentence, $"{Life} --grade {grade}");

    [Theory]
    [InlineData("day,shedding,knots,base,fit\n30,0,0,0,0\n120,1,1,1,1\n", "Line 3: day 120 lies after the --age of 100 days.")]
    [InlineData(
        "day,shedding,knots,base,fit\n30,0,0,0,0\n60,1,4,1,1\n",
        "Line 3: grade 4 means that the unit was worn out on day 60: nothing remains."
    )]
    [InlineData(
        "day,shedding,knots,base,fit\n30,0,0,0,0\n60,1,x,1,1\n",
        "Line 3: \"x\" in knots is no grade: they run from 0, as new, to 4, unfit, and are empty where nobody looked."
    )]
    [InlineData("day,shedding,knots,base,fit\n,0,0,0,0\n", "Line 2: day has no value.")]
    [InlineData("day,shedding,knots,base\n30,0,0,0\n", "There is no column \"fit\"; the header has day, shedding, knots, base.")]
    [InlineData("day,shedding,knots,base,fit\n30,0,0,0,0\n30,0,0,0,1\n", "Grades of day 30 are given twice.")]
    public void A_file_of_grades_is_read_line_by_line(string csv, string sentence)
    {
        var file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".csv");
        File.WriteAllText(file, csv);
        try
        {
            AssertRefused(sentence, $"{Life} --grades {file}");
        }
        finally
        {
            File.Delete(file);
        }
    }

    // What the grades of a take-down are weighed with is checked against its definition in the Domain's own tests.
    [Fact]
    public void Grades_move_what_is_left_the_way_they_say()
    {
        var (plain, early, sound) = (
            Median(Life),
            Median($"{Life} --grade 50:2,1,,1 --grade 80:2,2,1,1"),
            Median($"{Life} --grade 50:0,0,0,0 --grade 95:0,0,0,0")
        );

        Assert.True(early < 0.85 * plain && sound > 1.02 * plain, $"{early} {plain} {sound}");
        // Nobody looked: it is no look.
        Assert.Equal(plain, Median($"{Life} --grade 60:,,,"), 1e-9);
        var analysis = Analysis.Of($"{Life} --grade 50:2,1,,1".Split(' '));
        Assert.Contains("\"looks\": 1", analysis.Output, StringComparison.Ordinal);
        Assert.Contains("is assumed here", analysis.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void With_grades_a_life_of_many_years_is_refused() =>
        AssertRefused(
            "With grades a life is worked out day by day: a unit that may last 2900 days more cannot be asked so.",
            "remaining --life-shape 2 --life-scale 20000 --age 100 --grade 60:1,1,1,1"
        );

    private static double Median(string words) =>
        System.Text.Json.JsonDocument.Parse(Analysis.Of(words.Split(' ')).Output).RootElement.GetProperty("median").GetDouble();

    private static void AssertRefused(string sentence, string words)
    {
        var analysis = Analysis.Of(words.Split(' '));

        Assert.Equal((2, "", sentence), (analysis.Code, analysis.Output, analysis.Errors.TrimEnd()));
    }
}
