using HairClinic.Domain.Bonding;
using HairClinic.Domain.Practices;

namespace HairClinic.Domain.Tests.Bonding;

/// <summary>Which of a practice's rows says how long a bond holds: the one that names most, a base before an adhesive before an attachment.</summary>
public sealed class HoldWindowRuleTests
{
    private static readonly Guid Lace = Guid.CreateVersion7();
    private static readonly Guid Skin = Guid.CreateVersion7();
    private static readonly Guid Glue = Guid.CreateVersion7();
    private static readonly Guid Tape = Guid.CreateVersion7();

    public static TheoryData<string, string> FromLeastToMost =>
        new()
        {
            { "", "attachment" },
            { "attachment", "adhesive" },
            { "adhesive", "adhesive attachment" },
            { "adhesive attachment", "base" },
            { "base", "base attachment" },
            { "base attachment", "base adhesive" },
            { "base adhesive", "base adhesive attachment" },
        };

    [Theory]
    [MemberData(nameof(FromLeastToMost))]
    public void The_row_that_names_more_wins(string fewer, string more)
    {
        var (less, most) = (Row(fewer), Row(more));

        Assert.Same(most, HoldWindowRule.Choose([less, most], Lace, Glue, Attachment.Liquid));
        Assert.Same(most, HoldWindowRule.Choose([most, less], Lace, Glue, Attachment.Liquid));
    }

    [Fact]
    public void A_row_that_names_another_base_adhesive_or_attachment_does_not_apply()
    {
        foreach (var part in new[] { "base", "adhesive", "attachment" })
        {
            var row = Row(part);
            Assert.NotNull(row.MatchScore(Lace, Glue, Attachment.Liquid));
            Assert.Null(
                row.MatchScore(
                    part == "base" ? Skin : Lace,
                    part == "adhesive" ? Tape : Glue,
                    part == "attachment" ? Attachment.Tape : Attachment.Liquid
                )
            );
        }
        // Nobody wrote down what it was glued with.
        Assert.Null(Row("adhesive").MatchScore(Lace, null, Attachment.Liquid));
    }

    [Fact]
    public void Of_two_that_name_as_much_the_more_careful_one_wins()
    {
        var (careful, bold) = (Row("base", earliest: 3), Row("base", earliest: 5));

        Assert.Same(careful, HoldWindowRule.Choose([bold, careful], Lace, Glue, Attachment.Liquid));
    }

    [Fact]
    public void Where_no_row_applies_it_is_said_what_to_do() =>
        Assert.StartsWith(
            "No hold window fits",
            Assert.Throws<Refusal>(() => HoldWindowRule.Choose([Row("base")], Skin, null, Attachment.Liquid)).Message,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData(0, 4)]
    [InlineData(5, 4)]
    [InlineData(4, 27)]
    public void A_window_opens_after_a_week_and_closes_no_earlier_within_half_a_year(int earliest, int latest) =>
        Refused.Saying(
            "A hold window opens after at least one week and closes no earlier, within 26 weeks.",
            () => new HoldWindowRule(Guid.CreateVersion7(), earliest, latest)
        );

    [Theory]
    [InlineData(1, 1)]
    [InlineData(1, 26)]
    [InlineData(26, 26)]
    public void Its_bounds_are_taken(int earliest, int latest)
    {
        var rule = new HoldWindowRule(Guid.CreateVersion7(), earliest, latest);

        Assert.Equal((earliest, latest), (rule.EarliestWeeks, rule.LatestWeeks));
    }

    private static HoldWindowRule Row(string names, int earliest = 4)
    {
        var parts = names.Split(' ');
        var rule = new HoldWindowRule(Guid.CreateVersion7(), earliest, 8);
        rule.Edit(
            parts.Contains("base") ? Lace : null,
            parts.Contains("adhesive") ? Glue : null,
            parts.Contains("attachment") ? Attachment.Liquid : null,
            earliest,
            8
        );
        return rule;
    }
}
