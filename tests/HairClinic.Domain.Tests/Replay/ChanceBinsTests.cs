using HairClinic.Domain.Replay;

namespace HairClinic.Domain.Tests.Replay;

public sealed class ChanceBinsTests
{
    [Fact]
    public void Chances_are_put_together_and_held_against_what_came()
    {
        var bins = ChanceBins.Group([(0.01, false), (0.02, false), (0.04, true), (0.04, false), (0.6, true), (1, true)]);

        Assert.Equal([(0, 0.02, 0, 1), (0.02, 0.05, 1, 3), (0.5, 1, 2, 2)], bins.Select(b => (b.From, b.To, b.Came, b.Count)));
        Assert.Equal(0.1 / 3, bins[1].Said, 1e-12);
    }
}
