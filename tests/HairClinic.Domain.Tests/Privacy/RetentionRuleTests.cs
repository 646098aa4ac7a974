using HairClinic.Domain.Practices;
using HairClinic.Domain.Privacy;

namespace HairClinic.Domain.Tests.Privacy;

public sealed class RetentionRuleTests
{
    [Fact]
    public void Keys_of_what_was_saved_outlive_the_day_in_which_a_save_is_sent_again() =>
        Refused.Saying(
            "Between {0} and {1} days.",
            () => new RetentionRule(Guid.NewGuid(), RetentionSubject.WriteKeys).Set(1, byItself: true)
        );

    [Fact]
    public void Nobody_is_erased_unasked() =>
        Refused.Saying(
            "Nobody is erased unasked: look at the list and confirm it.",
            () => new RetentionRule(Guid.NewGuid(), RetentionSubject.ClientsWhoLeft).Set(3650, byItself: true)
        );

    [Fact]
    public void What_a_practice_starts_with_is_within_the_bounds() =>
        Assert.All(
            Enum.GetValues<RetentionSubject>(),
            subject =>
            {
                var rule = new RetentionRule(Guid.NewGuid(), subject);
                rule.Set(rule.KeepDays, rule.ByItself);
            }
        );
}
