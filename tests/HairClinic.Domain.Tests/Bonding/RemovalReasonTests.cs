using HairClinic.Domain.Bonding;

namespace HairClinic.Domain.Tests.Bonding;

public sealed class RemovalReasonTests
{
    [Fact]
    public void What_tells_of_health_is_confidential_and_nothing_else() =>
        Assert.Equal(
            [RemovalReason.Reaction, RemovalReason.Skin, RemovalReason.Operation, RemovalReason.Treatment],
            Enum.GetValues<RemovalReason>().Where(r => r.IsConfidential())
        );

    [Fact]
    public void Every_reason_fits_a_rebond_or_a_take_down_alone_but_what_was_not_seen_again_and_a_log_taken_back() =>
        Assert.Equal(
            [RemovalReason.NotSeenAgain, RemovalReason.TakenBack],
            Enum.GetValues<RemovalReason>().Where(r => !r.AllowsNewBond() && !r.EndsWithTakeDown())
        );
}
