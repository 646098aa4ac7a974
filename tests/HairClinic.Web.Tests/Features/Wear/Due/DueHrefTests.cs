using HairClinic.Web.Features.Wear;

namespace HairClinic.Web.Tests.Features.Wear.Due;

public sealed class DueHrefTests
{
    private static readonly Guid Bond = Guid.Parse("01948b0c-9f4b-7c3e-8a55-d7c7a1b2c3d4");

    [Fact]
    public void The_whole_list_of_ones_own_salon_is_the_plain_address() =>
        Assert.Equal("/due", DueHref.Build(DuePart.All, allSalons: false));

    [Fact]
    public void Every_filter_and_the_place_on_the_page_is_in_the_address() =>
        Assert.Equal(
            "/due?part=put-off&salon=all&after=1_2027-02-03_01948b0c9f4b7c3e8a55d7c7a1b2c3d4&contact=01948b0c9f4b7c3e8a55d7c7a1b2c3d4#r7",
            DueHref.Build(DuePart.PutOff, allSalons: true, new DueCursor(1, new(2027, 2, 3), Bond), Bond, row: 7)
        );

    [Fact]
    public void Each_part_is_found_by_its_word_and_a_mistyped_one_hides_nobody()
    {
        Assert.All(Enum.GetValues<DuePart>(), part => Assert.Equal(part, DueHref.FromQueryValue(DueHref.ToQueryValue(part))));
        Assert.Equal(DuePart.All, DueHref.FromQueryValue("lited"));
        Assert.Equal(DuePart.All, DueHref.FromQueryValue(null));
    }
}
