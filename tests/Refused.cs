using HairClinic.Domain.Practices;
using Xunit;

namespace HairClinic;

/// <summary>An act is refused, and by which refusal: its sentence as the code has it, the blanks unfilled.</summary>
internal static class Refused
{
    public static void Saying(string sentence, Action act) => Assert.Equal(sentence, Assert.Throws<Refusal>(act).Sentence);

    public static void Saying(string sentence, Func<object?> act) => Assert.Equal(sentence, Assert.Throws<Refusal>(act).Sentence);

    public static async Task SayingAsync(string sentence, Func<Task> act) =>
        Assert.Equal(sentence, (await Assert.ThrowsAsync<Refusal>(act)).Sentence);
}
