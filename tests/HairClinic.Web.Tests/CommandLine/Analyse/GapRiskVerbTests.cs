using System.Text.Json;

namespace HairClinic.Web.Tests.CommandLine.Analyse;

/// <summary>Expected values computed with R's integrate (rel. tolerance 1e-11), as in the domain tests' gap.csv.</summary>
public sealed class GapRiskVerbTests
{
    private const string Life = "gap --life-shape 7.6 --life-scale 260 --lead-mean-log 4.025351691 --preparation 14";

    [Theory]
    [InlineData("--age 60 --lead-sd-log 0.2077 --lead-df 4", 0.0116456359, 37, 0.38623682)]
    [InlineData("--age 0 --lead-sd-log 0.25 --alpha 0.05 --horizon 365", 0.0001662742, 100, 0.00195061)]
    [InlineData("--age 200 --lead-sd-log 0.25", 0.6990806549, null, 23.66505907)]
    public void The_document_says_when_to_reorder(string words, double gap, int? days, double without)
    {
        var analysis = Analysis.Of($"{Life} {words}".Split(' '));

        Assert.Equal((0, ""), (analysis.Code, analysis.Errors));
        Assert.Equal(gap, analysis.Number("gapIfOrderedToday"), 1e-6);
        Assert.Equal(without, analysis.Number("expectedDaysWithoutHair"), 1e-6);
        var told = analysis.Json.GetProperty("reorderInDays");
        Assert.Equal(days, told.ValueKind == JsonValueKind.Null ? null : told.GetInt32());
    }

    // mpmath 1.3, 30 digits. Of a normal lead time nothing is left to come long before; a Student's t never ends.
    [Theory]
    [InlineData("--horizon 1e4", 1.0266713635137541, 1e-9)]
    [InlineData("--horizon 1e9", 1.0266713635137541, 1e-9)]
    [InlineData("--horizon 1e300", 1.0266713635137541, 1e-9)]
    [InlineData("--horizon 20", 0.01693706954382348, 1e-12)]
    [InlineData("--horizon 0.001", 2.6668322525574705e-11, 1e-20)]
    [InlineData("--horizon 1e-300", 0, 0)]
    [InlineData("--horizon 0", 0, 0)]
    [InlineData("--lead-df 1e12", 1.0266713635124963, 1e-9)]
    [InlineData("--lead-df 1e12 --horizon 1e9", 1.0266713635137541, 1e-9)]
    [InlineData("--lead-df 1e300 --horizon 1e9", 1.0266713635137541, 1e-9)]
    public void Days_without_hair_are_right_for_every_horizon_and_every_tail(string words, double days, double apart)
    {
        var analysis = Analysis.Of($"{Life} --age 100 --lead-sd-log 0.25 {words}".Split(' '));

        Assert.Equal((0, ""), (analysis.Code, analysis.Errors));
        Assert.Equal(days, analysis.Number("expectedDaysWithoutHair"), apart);
    }

    [Theory]
    [InlineData("--age 0 --life-scale 260", 100, false, null)]
    [InlineData("--age 200 --life-scale 260", null, false, "Ordered today, the chance of a gap is above --alpha already.")]
    [InlineData("--age 1e9 --life-scale 260", null, false, "Ordered today, the chance of a gap is above --alpha already.")]
    [InlineData("--age 0 --life-scale 1e6", null, true, "The order can wait 36500 days or longer: farther is not looked.")]
    [InlineData("--age 0 --life-scale 1e9", null, true, "The order can wait 36500 days or longer: farther is not looked.")]
    public void Where_no_day_to_reorder_is_named_it_is_said_why(string words, int? days, bool pastSight, string? reason)
    {
        var json = Analysis
            .Of($"gap --life-shape 7.6 --lead-mean-log 4.025351691 --lead-sd-log 0.25 --preparation 14 {words}".Split(' '))
            .Json;

        Assert.Equal(days?.ToString(), json.GetProperty("reorderInDays").ToString() is { Length: > 0 } said ? said : null);
        Assert.Equal(pastSight, json.GetProperty("pastSight").GetBoolean());
        Assert.Equal(reason, json.GetProperty("reorderReason").GetString());
    }

    public static TheoryData<string, string> Extremes
    {
        get
        {
            var rows = new TheoryData<string, string>();
            foreach (var option in "life-shape life-scale age lead-mean-log lead-sd-log lead-df preparation alpha horizon".Split(' '))
            {
                foreach (
                    var word in new[] { "0", "-1", "1e300", "-1e300", "1e-300", "1e400", "1e-400", "NaN", "Infinity", "-Infinity", "", "x" }
                )
                    rows.Add("--" + option, word);
            }
            return rows;
        }
    }

    // Whatever an option says, either all there is to say is a number in its place, or it is refused by its name in one line.
    [Theory]
    [MemberData(nameof(Extremes))]
    public void Every_option_at_its_extremes_is_answered_or_refused(string option, string word)
    {
        var words = new Dictionary<string, string>
        {
            ["--life-shape"] = "7.6",
            ["--life-scale"] = "260",
            ["--age"] = "100",
            ["--lead-mean-log"] = "4.025351691",
            ["--lead-sd-log"] = "0.25",
            ["--preparation"] = "14",
            [option] = word,
        };

        var analysis = Analysis.Of(["gap", .. words.SelectMany(pair => new[] { pair.Key, pair.Value })]);

        if (analysis.Code == 0)
        {
            Assert.InRange(analysis.Number("gapIfOrderedToday"), 0, 1);
            Assert.InRange(analysis.Number("expectedDaysWithoutHair"), 0, 1e300);
            Assert.NotEqual(
                analysis.Json.GetProperty("reorderInDays").ValueKind == JsonValueKind.Null,
                analysis.Json.GetProperty("reorderReason").ValueKind == JsonValueKind.Null
            );
        }
        else
        {
            Assert.Equal((2, ""), (analysis.Code, analysis.Output));
            Assert.StartsWith(option, Assert.Single(analysis.Errors.Trim().Split('\n')), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("--lead-df 0.05", "--lead-df is 0.05: it must lie between 0.1 and 1E+300.")]
    [InlineData("--lead-df 1e-300", "--lead-df is 1e-300: it must lie between 0.1 and 1E+300.")]
    [InlineData("--lead-df NaN", "--lead-df is \"NaN\", which is no number.")]
    [InlineData("--horizon -1", "--horizon is -1: it must lie between 0 and 1E+300.")]
    [InlineData("--horizon 1e400", "--horizon is \"1e400\", which is too large a number.")]
    [InlineData("--alpha 0", "--alpha must lie between 0 and 1, and be neither.")]
    [InlineData("--alpha 1", "--alpha must lie between 0 and 1, and be neither.")]
    public void A_number_out_of_bounds_is_refused_with_them(string words, string sentence)
    {
        var analysis = Analysis.Of($"{Life} --age 100 --lead-sd-log 0.25 {words}".Split(' '));

        Assert.Equal((2, "", sentence), (analysis.Code, analysis.Output, analysis.Errors.TrimEnd()));
    }

    [Theory]
    [InlineData("--age -1 --lead-sd-log 0.25", "--age")]
    [InlineData("--age 1 --lead-sd-log 0", "--lead-sd-log")]
    [InlineData("--age 1 --lead-sd-log 0.2 --alpha 1.5", "--alpha")]
    [InlineData("--age 1 --lead-sd-log 0.2 --lead-df 0", "--lead-df")]
    [InlineData("--age old --lead-sd-log 0.2", "old")]
    [InlineData("--lead-sd-log 0.2", "--age")]
    public void What_makes_no_sense_is_refused_in_one_line(string words, string said)
    {
        var analysis = Analysis.Of($"{Life} {words}".Split(' '));

        Assert.Equal((2, ""), (analysis.Code, analysis.Output));
        Assert.Contains(said, Assert.Single(analysis.Errors.Trim().Split('\n')), StringComparison.Ordinal);
    }
}
