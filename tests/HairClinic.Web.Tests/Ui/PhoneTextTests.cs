using HairClinic.Web.Ui;

namespace HairClinic.Web.Tests.Ui;

public sealed class PhoneTextTests
{
    [Theory]
    [InlineData("+441632960001", "+44 1632 960001")]
    [InlineData("+15185550146", "+1 518-555-0146")]
    [InlineData("01632 960 001, evenings", "01632 960 001, evenings")]
    public void A_kept_number_is_shown_in_groups_and_one_from_before_as_it_was_written(string kept, string shown) =>
        Assert.Equal(shown, PhoneText.Format(kept));
}
