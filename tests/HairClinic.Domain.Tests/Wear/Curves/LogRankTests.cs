using HairClinic.Domain.Tests.Reference;
using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Tests.Wear.Curves;

/// <summary>Against logrank.csv (its first line names the source).</summary>
public sealed class LogRankTests
{
    private static readonly Table Published = Table.Read("logrank.csv");
    private static readonly int[] ByDrug = [.. Spells.Drug.Select(d => d == 1 ? 0 : 1)];
    private static readonly int[] ByRx = [.. Spells.Ovarian.Numbers("rx").Select(rx => (int)rx - 1)];
    private static readonly int[] ByEcog = [.. Spells.Ovarian.Numbers("ecog.ps").Select(ps => (int)ps - 1)];

    [Fact]
    public void Leukaemia_agrees() => Agrees("leukaemia_logrank", LogRank.Test(Spells.OfLeukaemia, ByDrug));

    [Fact]
    public void Ovarian_agrees() => Agrees("ovarian_logrank_rx", LogRank.Test(Spells.OfOvarian, ByRx));

    [Fact]
    public void Ovarian_within_strata_agrees() => Agrees("ovarian_logrank_rx_strata_ecog", LogRank.Test(Spells.OfOvarian, ByRx, ByEcog));

    [Fact]
    public void With_three_groups_the_order_of_groups_does_not_matter()
    {
        int[] groups = [.. Enumerable.Range(0, 42).Select(i => i % 3)];
        int[] turned = [.. groups.Select(g => (g + 1) % 3)];
        var test = LogRank.Test(Spells.OfLeukaemia, groups);

        // Computed outside the program from the definition, in exact fractions.
        Assert.Equal(1.2860666963631842, test.ChiSquare, 1e-12);
        Assert.Equal(11.192791230787364, test.Groups[1].Expected, 1e-12);
        Assert.Equal(2, test.DegreesOfFreedom);
        Assert.Equal(test.ChiSquare, LogRank.Test(Spells.OfLeukaemia, turned).ChiSquare, 1e-10);
        Assert.Equal(test.Groups.Sum(g => g.Observed), test.Groups.Sum(g => g.Expected), 1e-10);
    }

    [Fact]
    public void A_group_nobody_is_in_costs_no_degree_of_freedom() =>
        Assert.Equal(1, LogRank.Test(Spells.OfLeukaemia, [.. ByDrug.Select(g => g * 2)]).DegreesOfFreedom);

    [Fact]
    public void With_ends_known_only_within_an_interval_there_is_no_test_and_the_reason_is_told()
    {
        var test = LogRank.Test(Spells.OfLeukaemiaByWeek, ByDrug);

        Assert.Contains("interval", test.Undefined, StringComparison.Ordinal);
        Assert.True(double.IsNaN(test.P));
    }

    [Fact]
    public void One_group_alone_is_not_compared() => Assert.NotNull(LogRank.Test(Spells.OfNist, new int[20]).Undefined);

    [Fact]
    public void Groups_of_which_nothing_ended_are_not_compared() =>
        Assert.NotNull(LogRank.Test([Spell.RightCensored(3), Spell.RightCensored(5)], [0, 1]).Undefined);

    private static void Agrees(string name, LogRank test)
    {
        var rows = Published.Rows.Where(row => row[0] == name).ToList();
        Assert.Null(test.Undefined);
        Assert.Equal(rows.Count, test.Groups.Count);
        foreach (var (group, row) in test.Groups.Zip(rows))
        {
            Assert.Equal(Published.Number(row, "n"), group.Count);
            Assert.Equal(Published.Number(row, "observed"), group.Observed, 1e-8);
            Assert.Equal(Published.Number(row, "expected"), group.Expected, 1e-7);
            Assert.Equal(Published.Number(row, "chisq"), test.ChiSquare, 1e-8);
            Assert.Equal(Published.Number(row, "df"), test.DegreesOfFreedom);
            Assert.Equal(1, test.P / Published.Number(row, "p"), 1e-8);
        }
    }
}
