using HairClinic.Benchmarks.Calibration;
using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Tests.Calibration;

/// <summary>Two practices of the calibration: enough to see that it plays. Two hundred are the benchmarks' calibration.</summary>
public sealed class PracticeStoryTests
{
    [Fact]
    public void Two_small_practices_are_played_to_the_end_and_are_not_far_off()
    {
        Tally[] practices = [.. new[] { 3, 4 }.Select(seed => new PracticeStory(seed, LifeDistribution.Weibull, mostClients: 20).Play())];

        Assert.Equal(40, Tally.Sum(practices, "hold").Trials);
        Assert.InRange(Tally.Sum(practices, "hold").Share, 0.6, 1);
        Assert.InRange(Tally.Sum(practices, "life").Share, 0.6, 1);
        Assert.InRange(Tally.Sum(practices, "gap").Share, 0, 0.2);
        Assert.True(Tally.Sum(practices, "naive gap").Share > Tally.Sum(practices, "gap").Share);
    }
}
