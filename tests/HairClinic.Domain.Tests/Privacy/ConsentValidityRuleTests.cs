using HairClinic.Domain.Privacy;
using NodaTime;

namespace HairClinic.Domain.Tests.Privacy;

public sealed class ConsentValidityRuleTests
{
    private static readonly Instant Noon = Instant.FromUtc(2027, 2, 3, 12, 0);

    [Fact]
    public void The_last_word_stands() =>
        Assert.Null(
            ConsentValidityRule.FindConsent(
                [Said(true, Noon), Said(false, Noon + Duration.FromHours(1))],
                ConsentSubject.Photos,
                Noon + Duration.FromDays(1)
            )
        );

    [Fact]
    public void Before_it_was_taken_back_it_stood() =>
        Assert.NotNull(
            ConsentValidityRule.FindConsent([Said(true, Noon), Said(false, Noon + Duration.FromHours(1))], ConsentSubject.Photos, Noon)
        );

    [Fact]
    public void Agreeing_to_photos_agrees_to_nothing_else() =>
        Assert.Null(ConsentValidityRule.FindConsent([Said(true, Noon)], ConsentSubject.TeachingPhotos, Noon));

    [Fact]
    public void Silence_is_no_consent() => Assert.Null(ConsentValidityRule.FindConsent([], ConsentSubject.Treatment, Noon));

    [Fact]
    public void Of_two_at_the_same_instant_the_withdrawal_wins()
    {
        Assert.Null(ConsentValidityRule.FindConsent([Said(true, Noon), Said(false, Noon)], ConsentSubject.Photos, Noon));
        Assert.Null(ConsentValidityRule.FindConsent([Said(false, Noon), Said(true, Noon)], ConsentSubject.Photos, Noon));
    }

    [Fact]
    public void Agreed_again_after_taking_back_it_stands_again() =>
        Assert.NotNull(
            ConsentValidityRule.FindConsent(
                [Said(true, Noon), Said(false, Noon + Duration.FromHours(1)), Said(true, Noon + Duration.FromHours(2))],
                ConsentSubject.Photos,
                Noon + Duration.FromHours(2)
            )
        );

    private static Consent Said(bool given, Instant at) =>
        new(Guid.NewGuid(), Guid.Empty, ConsentSubject.Photos, given, Guid.Empty, at, takenBy: null, ConsentWay.OnTablet);
}
