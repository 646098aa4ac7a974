using HairClinic.Domain.Practices;
using HairClinic.Domain.Privacy;

namespace HairClinic.Domain.Tests.Privacy;

public sealed class RetentionRuleTests
{
    [Fact]
    public void Keys_of_what_was_saved_outlive_the_day_in_which_a_save_is_sent_again() =>
        Refused.Saying(
            "Between {0} and {1} days.",
            () => new RetentionRule(Guid.NewGuid(), RetentionSubject.WriteKeys).Edit(1, byItself: true)
        );

    [Fact]
    public void Nobody_is_erased_unasked() =>
        Refused.Saying(
            "Nobody is erased unasked: look at the list and confirm it.",
            () => new RetentionRule(Guid.NewGuid(), RetentionSubject.ClientsWhoLeft).Edit(3650, byItself: true)
        );

    [Fact]
    public void What_a_practice_starts_with_is_within_the_bounds() =>
        Assert.All(
            Enum.GetValues<RetentionSubject>(),
            subject =>
            {
                var rule = new RetentionRule(Guid.NewGuid(), subject);
                rule.Edit(rule.KeepDays, rule.ByItself);
            }
        );

    [Theory]
    [InlineData(RetentionSubject.WriteKeys, 2)]
    [InlineData(RetentionSubject.ClientsWhoLeft, 30)]
    [InlineData(RetentionSubject.Drafts, 1)]
    public void What_is_kept_is_kept_from_the_least_that_is_safe_to_ninety_years(RetentionSubject subject, int least)
    {
        var rule = new RetentionRule(Guid.NewGuid(), subject);

        rule.Edit(least, byItself: false);
        Assert.Equal((least, false), (rule.KeepDays, rule.ByItself));
        rule.Edit(33_000, byItself: subject != RetentionSubject.ClientsWhoLeft);
        Refused.Saying("Between {0} and {1} days.", () => rule.Edit(least - 1, byItself: false));
        Refused.Saying("Between {0} and {1} days.", () => rule.Edit(33_001, byItself: false));

        Assert.Equal((33_000, subject != RetentionSubject.ClientsWhoLeft), (rule.KeepDays, rule.ByItself));
    }

    /// <summary>What concerns a client goes only when somebody has looked; what the program itself left lying goes each night.</summary>
    [Fact]
    public void Only_what_tells_of_no_client_goes_by_itself_from_the_start() =>
        Assert.Equal(
            [RetentionSubject.ClientsWhoLeft, RetentionSubject.ContactNotes],
            Enum.GetValues<RetentionSubject>().Where(subject => !RetentionRule.DefaultsForSubject(subject).ByItself).Order()
        );
}
