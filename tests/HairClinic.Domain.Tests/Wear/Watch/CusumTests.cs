using HairClinic.Domain.Tests.Reference;
using HairClinic.Domain.Wear.Watch;

namespace HairClinic.Domain.Tests.Wear.Watch;

public sealed class CusumTests
{
    private static readonly Table Published = Table.Read("cusum_concentration.csv");

    // Montgomery & Runger, Example 16-6: target 99, K = 1, H = 10; no signal. The file's first line says more.
    [Fact]
    public void It_is_the_published_one_row_by_row()
    {
        var path = new Cusum(99, 1, 10).Path(Published.Numbers("x"));

        Assert.Equal(20, path.Length);
        foreach (var (point, row) in path.Zip(Published.Rows))
        {
            Assert.Equal(Published.Number(row, "upper_cusum"), point.Upper, 1e-9);
            Assert.Equal(Published.Number(row, "lower_cusum"), point.Lower, 1e-9);
            Assert.False(point.IsSignal);
        }
    }

    [Fact]
    public void Either_side_above_the_limit_is_a_signal_and_at_the_limit_is_none()
    {
        Assert.Equal([false, true], new Cusum(0, 0, 3).Path([3, 0.5]).Select(p => p.IsSignal));
        Assert.Equal([false, true], new Cusum(0, 0, 3).Path([-3, -0.5]).Select(p => p.IsSignal));
    }

    [Fact]
    public void Nothing_observed_is_an_empty_path()
    {
        Assert.Empty(new Cusum(99, 1, 10).Path([]));
    }
}
