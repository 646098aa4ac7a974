using HairClinic.Domain.Practices;

namespace HairClinic.Domain.Tests.Practices;

public sealed class TextExtensionsTests
{
    [Theory]
    [InlineData(null, "Called off.")]
    [InlineData("  ", "Called off.")]
    [InlineData("Side door.", "Side door.\nCalled off.")]
    public void A_line_is_added_below_what_a_note_says(string? note, string expected) =>
        Assert.Equal(expected, note.WithLine("Called off."));
}
