using System.Text;
using CsCheck;
using HairClinic.Web.Features.Clients;

namespace HairClinic.Web.Tests.Features.Clients.Find;

public sealed class PrefixRangeTests
{
    // PostgreSQL's collation "C" compares the bytes of UTF-8, which is the order of code points.
    private static int Bytewise(string one, string other) =>
        Encoding.UTF8.GetBytes(one).AsSpan().SequenceCompareTo(Encoding.UTF8.GetBytes(other));

    private static readonly Gen<string> Word = Gen.String[Gen.Char["abz09éßñ漢\uFFFD"], 1, 6];

    [Fact]
    public void A_word_lies_in_the_range_exactly_when_it_begins_with_the_prefix() =>
        Gen.Select(Word, Word)
            .Sample(
                (prefix, word) =>
                {
                    var range = PrefixRange.Covering(prefix);
                    var inside = Bytewise(word, range.From) >= 0 && Bytewise(word, range.Below) < 0;
                    Assert.Equal(word.StartsWith(prefix, StringComparison.Ordinal), inside);
                }
            );

    [Fact]
    public void Letters_beyond_the_basic_plane_and_before_the_surrogates_have_a_next_one()
    {
        Assert.Equal("\uE000", PrefixRange.Covering("\uD7FF").Below);
        Assert.Equal(char.ConvertFromUtf32(0x1F601), PrefixRange.Covering(char.ConvertFromUtf32(0x1F600)).Below);
    }
}
