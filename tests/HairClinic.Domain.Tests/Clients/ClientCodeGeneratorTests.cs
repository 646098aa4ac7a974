using HairClinic.Domain.Clients;

namespace HairClinic.Domain.Tests.Clients;

public sealed class ClientCodeGeneratorTests
{
    [Fact]
    public void A_code_is_a_letter_and_five_signs_in_two_halves()
    {
        Assert.Equal("CCC-CCC", ClientCodeGenerator.Draw(count => count == 13 ? 0 : 4));
        Assert.Equal("Y33-333", ClientCodeGenerator.Draw(count => count == 13 ? 12 : 0));
        Assert.Equal("YYY-YYY", ClientCodeGenerator.Draw(count => count - 1));
    }

    [Fact]
    public void Each_sign_is_drawn_on_its_own_and_from_no_more_than_there_are()
    {
        List<int> asked = [];

        ClientCodeGenerator.Draw(count =>
        {
            asked.Add(count);
            return 0;
        });

        Assert.Equal([13, 17, 17, 17, 17, 17], asked);
    }

    // What is mistaken for one another in print or handwriting, and the vowels: common practice, no source.
    [Theory]
    [InlineData("0ODQ")]
    [InlineData("1IL")]
    [InlineData("2Z")]
    [InlineData("5S")]
    [InlineData("6G")]
    [InlineData("8B")]
    [InlineData("UV")]
    [InlineData("AEIOU")]
    public void Nothing_in_it_can_be_misread_or_makes_a_word(string leftOut) =>
        Assert.DoesNotContain(ClientCodeGenerator.Alphabet, sign => leftOut.Contains(sign, StringComparison.Ordinal));

    [Fact]
    public void The_signs_are_digits_and_capitals_each_once()
    {
        Assert.All(ClientCodeGenerator.Alphabet, sign => Assert.True(char.IsAsciiDigit(sign) || char.IsAsciiLetterUpper(sign)));
        Assert.Equal(ClientCodeGenerator.Alphabet.Length, ClientCodeGenerator.Alphabet.Distinct().Count());
        Assert.All(ClientCodeGenerator.Letters, sign => Assert.True(char.IsAsciiLetterUpper(sign)));
    }

    [Theory]
    [InlineData("KX7-W4M", true)]
    [InlineData("C-0041", false)]
    [InlineData("7X7-W4M", false)]
    [InlineData("KX7W4M", false)]
    [InlineData("KX7-W4O", false)]
    [InlineData("kx7-w4m", false)]
    [InlineData("", false)]
    public void It_is_known_by_how_it_is_written(string code, bool like) =>
        Assert.Equal(like, ClientCodeGenerator.HasGeneratedFormat(code));

    [Fact]
    public void Whatever_is_drawn_is_written_so()
    {
        var dice = new Random(1);

        Assert.All(
            Enumerable.Range(0, 500).Select(_ => ClientCodeGenerator.Draw(dice.Next)),
            code => Assert.True(ClientCodeGenerator.HasGeneratedFormat(code), code)
        );
    }
}
