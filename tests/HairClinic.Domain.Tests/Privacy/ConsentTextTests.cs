using HairClinic.Domain.Privacy;
using NodaTime;

namespace HairClinic.Domain.Tests.Privacy;

public sealed class ConsentTextTests
{
    [Theory]
    [InlineData(0, false)]
    [InlineData(1, true)]
    [InlineData(4000, true)]
    [InlineData(4001, false)]
    public void The_words_of_a_consent_are_some_and_no_book(int length, bool taken)
    {
        var words = " " + new string('a', length) + " ";

        if (taken)
            Assert.Equal(length, Text(words).Words.Length);
        else
            Refused.Saying("Say in 1 to 4,000 characters what the client agrees to.", () => Text(words));
    }

    [Fact]
    public void All_is_asked_for_that_is_done_and_nothing_else() =>
        Assert.Equal([ConsentSubject.Messages], Enum.GetValues<ConsentSubject>().Where(subject => !subject.IsAsked()));

    private static ConsentText Text(string words) =>
        new(Guid.CreateVersion7(), ConsentSubject.Messages, "en-GB", 1, words, Instant.FromUtc(2027, 2, 3, 10, 0), by: null);
}
