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
