using Bunit;
using HairClinic.Web.Features.Accounts;
using HairClinic.Web.Tests.Ui;
using Slice = HairClinic.Web.Features.Accounts.GiveAccount;

namespace HairClinic.Web.Tests.Features.Accounts.GiveAccount;

public sealed class GiveAccountFormTests : UiTestContext
{
    [Fact]
    public void Without_a_password_the_button_makes_a_link()
    {
        BeInteractive();
        var input = new Slice.Input();
        var form = Render<GiveAccountForm>(p => p.Add(f => f.Input, input));
        Assert.Contains("Save and make a link", form.Find("button").TextContent, StringComparison.Ordinal);

        form.Find("[name=Password]").Change("seven copper kettles");

        Assert.Equal("Save", form.Find("button").TextContent.Trim());
    }

    [Theory]
    [InlineData("two words", null, null, nameof(Slice.Input.Name))]
    [InlineData("sten", "not-an-address", null, nameof(Slice.Input.Email))]
    [InlineData("sten", null, "fourteen chars", nameof(Slice.Input.Password))]
    [InlineData("sten", null, "aaaaaaaaaaaaaaaaaaaa", nameof(Slice.Input.Password))]
    public void What_cannot_be_is_told_at_its_field(string name, string? email, string? password, string field)
    {
        var input = new Slice.Input
        {
            Name = name,
            Email = email,
            Password = password,
        };

        Assert.Equal(field, Assert.Single(new GiveAccountRules().Validate(input).Errors).PropertyName);
    }
}
