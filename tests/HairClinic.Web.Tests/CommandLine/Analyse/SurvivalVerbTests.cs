using System.Text;
using System.Text.Json;
using HairClinic.Web.Language;

namespace HairClinic.Web.Tests.CommandLine.Analyse;

/// <summary>
/// Remission times of Freireich et al. 1963 (Blood 21:699) as printed in Gehan 1965; expected values computed with R 4.2.2,
/// survival 3.5-3 (survreg, survfit, survdiff), as in the domain tests' reference tables.
/// </summary>
public sealed class SurvivalVerbTests
{
    private static readonly int[] Control = [1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23];
    private static readonly int[] Relapsed = [6, 6, 6, 7, 10, 13, 16, 22, 23];
    private static readonly int[] InRemission = [6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35];
    private static readonly string ByTime = Table(
        "time,cens,treat",
        (t, treat, ended) => FormattableString.Invariant($"{t},{(ended ? 1 : 0)},{treat}")
    );
    private static readonly string ByWeek = Table(
        "from,to,treat",
        (t, treat, ended) => FormattableString.Invariant($"{(!ended ? t : t > 1 ? t - 1 : "")},{(ended ? t : "")},{treat}")
    );

    [Fact]
    public void Coefficients_are_named_as_the_fit_names_them_and_agree_with_the_published_ones()
    {
        var analysis = Analysis.Of(ByTime, "--time time --event cens --group treat --covariates treat --flat-priors");

        Assert.Equal((0, ""), (analysis.Code, analysis.Errors));
        // The base is the level that sorts first, "6-MP".
        Assert.Equal(2.248352359 + 1.267334587, analysis.Number("coefficients", "(Intercept)"), 1e-8);
        Assert.Equal(-1.267334587, analysis.Number("coefficients", "treatcontrol"), 1e-8);
        Assert.Equal(0.7321944041, analysis.Number("scale"), 1e-9);
        Assert.Equal(-106.5794916, analysis.Number("logLikelihood"), 1e-6);
        Assert.Equal(Math.Pow(0.1472918826, 2), analysis.Json.GetProperty("covariance")[2][2].GetDouble(), 1e-8);
        Assert.Equal(16.79294099, analysis.Number("logRank", "chiSquare"), 1e-7);
        Assert.Equal(1, analysis.Number("logRank", "degreesOfFreedom"));
        Assert.Equal(4.168809109e-05, analysis.Number("logRank", "p"), 1e-12);
    }

    [Fact]
    public void Each_group_has_its_curve_and_its_quantiles()
    {
        var json = Analysis.Of(ByTime, "--time time --event cens --group treat --flat-priors").Json;
        var curve = json.GetProperty("kaplanMeier").EnumerateArray().Where(s => s.GetProperty("group").GetString() == "control").ToList();
        var median = json.GetProperty("quantiles").EnumerateArray().First(q => Is(q, "6-MP", 0.5));

        Assert.Equal(12, curve.Count);
        Assert.Equal(0.9047619048, curve[0].GetProperty("survival").GetDouble(), 1e-9);
        Assert.Equal(0.06405644849, curve[0].GetProperty("stdError").GetDouble(), 1e-9);
        Assert.Equal(JsonValueKind.Null, curve[^1].GetProperty("stdError").ValueKind);
        Assert.Equal(23, median.GetProperty("time").GetDouble());
        Assert.Equal(25.72152621, median.GetProperty("modelTime").GetDouble(), 1e-6);
        Assert.Equal(6.303934637, median.GetProperty("modelStdError").GetDouble(), 1e-5);
    }

    [Fact]
    public void With_intervals_the_fit_agrees_and_the_log_rank_test_is_null_with_a_reason()
    {
        var analysis = Analysis.Of(
            ByWeek,
            "--lower from --upper to --group treat --covariates treat --distribution lognormal --flat-priors"
        );

        Assert.Equal(0, analysis.Code);
        Assert.Equal(-1.506235238, analysis.Number("coefficients", "treatcontrol"), 1e-7);
        Assert.Equal(1.033413827, analysis.Number("scale"), 1e-7);
        Assert.Equal(-107.4038296, analysis.Number("logLikelihood"), 1e-6);
        Assert.Equal(JsonValueKind.Null, analysis.Json.GetProperty("logRank").ValueKind);
        Assert.Contains("interval", analysis.Json.GetProperty("logRankReason").GetString(), StringComparison.Ordinal);
        Assert.Equal(2 * (116.0891589 - 107.4038296), analysis.Number("groupLikelihoodRatio", "chiSquare"), 1e-6);
        Assert.Equal(2, analysis.Json.GetProperty("turnbull").GetArrayLength());
    }

    [Fact]
    public void A_byte_order_mark_line_ends_of_any_kind_and_comments_anywhere_do_no_harm()
    {
        const string Words = "--time t --event e --flat-priors";
        var plain = Analysis.Of("t,e\n5,1\n9,0\n7,1\n", Words);
        var odd = Analysis.Of("\uFEFF# weeks\r\n\r\nt,e\r\n5,1\r\n# left out: 6,1\r\n 9 ,0\r\n7.0,TRUE\r\n\r\n", Words);

        Assert.Equal(plain.Output, odd.Output);
    }

    [Fact]
    public void A_group_that_is_one_for_all_has_its_curve_and_no_test()
    {
        var analysis = Analysis.Of("t,e,g\n5,1,lace\n9,0,lace\n7,1,lace\n", "--time t --event e --group g --flat-priors");

        Assert.Equal(0, analysis.Code);
        Assert.Equal(2, analysis.Json.GetProperty("kaplanMeier").GetArrayLength());
        Assert.NotNull(analysis.Json.GetProperty("logRankReason").GetString());
        Assert.Single(analysis.Json.GetProperty("coefficients").EnumerateObject());
    }

    [Fact]
    public void A_weight_is_as_good_as_that_many_lines()
    {
        const string Words = "--time t --event e --flat-priors";
        var once = Analysis.Of("t,e,n\n5,1,2\n9,0,1\n7,1,1\n", Words + " --weight n");
        var many = Analysis.Of("t,e\n5,1\n5,1\n9,0\n7,1\n", Words);

        Assert.Equal(many.Number("logLikelihood"), once.Number("logLikelihood"), 1e-9);
        Assert.Equal(many.Json.GetProperty("kaplanMeier").ToString(), once.Json.GetProperty("kaplanMeier").ToString());
    }

    [Fact]
    public void Where_there_is_no_estimate_nothing_is_numbered_and_the_reason_stands_there()
    {
        var analysis = Analysis.Of("t,e\n5,0\n9,0\n", "--time t --event e --flat-priors");

        Assert.Equal(0, analysis.Code);
        Assert.Equal(JsonValueKind.Null, analysis.Json.GetProperty("coefficients").ValueKind);
        Assert.Equal(JsonValueKind.Null, analysis.Json.GetProperty("logLikelihood").ValueKind);
        Assert.Contains("nothing has ended", analysis.Json.GetProperty("estimateReason").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void With_priors_nothing_seen_to_end_is_an_answer_near_the_window()
    {
        var analysis = Analysis.Of("t,e\n5,0\n9,0\n", "--time t --event e");

        Assert.InRange(analysis.Number("coefficients", "(Intercept)"), 3.79, 3.82);
        Assert.InRange(analysis.Number("scale"), 0.17, 0.19);
        Assert.Equal(1, analysis.Json.GetProperty("notes").GetArrayLength());
    }

    [Theory]
    [InlineData("t,e\n0,1\n", "--time t --event e", "Line 2")]
    [InlineData("# a comment\nt,e\n3,1\n-4,1\n", "--time t --event e", "Line 4")]
    [InlineData("t,e\nsoon,1\n", "--time t --event e", "\"soon\"")]
    [InlineData("t,e\nNaN,1\n", "--time t --event e", "Line 2")]
    [InlineData("t,e\n3,2\n", "--time t --event e", "neither 1")]
    [InlineData("t,e\n3,\n", "--time t --event e", "no value")]
    [InlineData("t,e\n3,1,7\n", "--time t --event e", "3 cells")]
    [InlineData("t,e\n3,1\n", "--time t --event f", "no column \"f\"")]
    [InlineData("t,e\n3,1\n", "--time t", "--event")]
    [InlineData("t,e\n3,1\n", "--time t --event e --lower t --upper e", "either")]
    [InlineData("t,e\n", "--time t --event e", "no rows")]
    [InlineData("", "--time t --event e", "header")]
    [InlineData("t,e\n3,1\n4,\"1\n", "--time t --event e", "quote")]
    [InlineData("l,u\n5,3\n", "--lower l --upper u", "later")]
    [InlineData("l,u\n,\n", "--lower l --upper u", "neither")]
    [InlineData("l,u\n0,\n", "--lower l --upper u", "not above 0")]
    [InlineData("t,e,w\n3,1,-1\n", "--time t --event e --weight w", "below 0")]
    [InlineData("t,e,x\n3,1,\n4,1,2\n", "--time t --event e --covariates x", "no value")]
    [InlineData("t,e\n3,1\n", "--time t --event e --distribution gamma", "gamma")]
    [InlineData("t,e\n3,1\n", "--time t --event e --nonsense", "nonsense")]
    [InlineData("t,e,g\n3,1,lace\n4,1,lace\n", "--time t --event e --covariates g --factor g", "the same on every line")]
    [InlineData("t,e,c\n3,1,a\n", "--time t --event e --client c --flat-priors", "--client")]
    public void What_makes_no_sense_is_refused_in_one_line_with_nothing_on_the_way_out(string csv, string words, string said)
    {
        var analysis = Analysis.Of(csv, words);

        Assert.Equal((2, ""), (analysis.Code, analysis.Output));
        Assert.Contains(said, Assert.Single(analysis.Errors.Trim().Split('\n')), StringComparison.Ordinal);
    }

    private static bool Is(JsonElement quantile, string group, double probability) =>
        quantile.GetProperty("group").GetString() == group && quantile.GetProperty("probability").GetDouble() == probability;

    private static string Table(string header, Func<int, string, bool, string> line)
    {
        var text = new StringBuilder("# remission times in weeks\n").Append(header).Append('\n');
        foreach (var t in Control)
            text.Append(line(t, "control", true)).Append('\n');
        foreach (var t in Relapsed)
            text.Append(line(t, "6-MP", true)).Append('\n');
        foreach (var t in InRemission)
            text.Append(line(t, "6-MP", false)).Append('\n');
        return text.ToString();
    }
}
