using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Tests.Accounts;

/// <summary>NIST SP 800-63B-4, 3.1.1: at least 15 letters, long ones taken, any kind of sign, and none that is guessed first.</summary>
public sealed class PasswordRuleTests
{
    private static readonly string?[] Names = ["Juniper Larkin", "juniper.larkin@post.test", "Rooksmere Practice", "Canal Side"];

    [Theory]
    [InlineData("seven copper kettles")]
    [InlineData("long lavender evenings")]
    [InlineData("quiet-harbour-demo")]
    [InlineData("correct horse battery staple")]
    [InlineData("aaa bbb cedar thimble lodge")]
    [InlineData("zq81-vm40-tw27-kx93")]
    [InlineData("übermäßig große Äpfel")]
    [InlineData("沉默的港口有七个铜水壶和一只猫")]
    [InlineData("juniper plants seven copper kettles")]
    public void Long_and_not_foreseeable_will_do(string password) => Assert.Null(PasswordRule.Fault(password, Names));

    [Theory]
    [InlineData("fourteen chars", PasswordRule.TooShort)]
    [InlineData("aaaaaaaaaaaaaaaaaaaa", PasswordRule.Repeats)]
    [InlineData("abcabcabcabcabcabc", PasswordRule.Repeats)]
    [InlineData("123qwe123qwe123qwe", PasswordRule.Repeats)]
    [InlineData("abcdefghijklmnopqr", PasswordRule.IsWalk)]
    [InlineData("98765432109876543210", PasswordRule.IsWalk)]
    [InlineData("qwertyuiopasdfghjkl", PasswordRule.IsWalk)]
    [InlineData("zaq12wsxcde34rfvbgt5", PasswordRule.IsWalk)]
    [InlineData("1qaz2wsx3edc4rfv5tgb", PasswordRule.IsWalk)]
    [InlineData("azertyuiopqsdfghjklm", PasswordRule.IsWalk)]
    [InlineData("password83729104!", PasswordRule.IsListed)]
    [InlineData("passwordpassword", PasswordRule.IsListed)]
    [InlineData("P@$$w0rd-2027-8361", PasswordRule.IsListed)]
    [InlineData("!!iloveyou!!8462975", PasswordRule.IsListed)]
    [InlineData("sunshine&dragon!9173", PasswordRule.IsListed)]
    [InlineData("mypasswordqwertyuiop", PasswordRule.IsListed)]
    [InlineData("23176djivanfros", PasswordRule.IsListed)]
    [InlineData("juniperlarkin1987", PasswordRule.IsNamed)]
    [InlineData("Juniper.Larkin@post", PasswordRule.IsNamed)]
    [InlineData("rooksmerepractice!1", PasswordRule.IsNamed)]
    [InlineData("R00ksmere-Pract1ce", PasswordRule.IsNamed)]
    [InlineData("Canal Side 83719264", PasswordRule.IsNamed)]
    public void What_is_guessed_first_is_refused_with_its_reason(string password, string reason) =>
        Assert.Equal(reason, PasswordRule.Fault(password, Names));

    [Fact]
    public void Length_counts_letters_as_people_do_and_long_ones_are_taken_whole()
    {
        // Fourteen and fifteen signs outside the basic plane: two units each in memory, one letter each to people.
        string[] signs = ["🌲", "🫖", "🪢", "🧵", "🪞", "🕰", "🧺", "🪟", "🛶", "🪁", "🧭", "🪗", "🎏", "🪶", "🧿"];
        Assert.Equal(PasswordRule.TooShort, PasswordRule.Fault(string.Concat(signs.Take(14)), []));
        Assert.Null(PasswordRule.Fault(string.Concat(signs), []));
        var words = string.Concat(Enumerable.Range(0, 40).Select(i => $"{(char)('a' + i % 26)}ove{i} "));
        Assert.Null(PasswordRule.Fault(words[..200], []));
        Assert.Equal(PasswordRule.TooLong, PasswordRule.Fault(words + words, []));
    }

    [Fact]
    public void The_same_password_from_another_keyboard_is_the_same()
    {
        var hasher = new AccountPasswordHasher(
            Microsoft.Extensions.Options.Options.Create(new Microsoft.AspNetCore.Identity.PasswordHasherOptions())
        );
        var user = new AppUser();
        // é as one sign and as e with an accent; the full-width digits of some keyboards.
        var hash = hasher.HashPassword(user, "caf\u00e9 au lait, 12 spoons");

        Assert.Equal(
            Microsoft.AspNetCore.Identity.PasswordVerificationResult.Success,
            hasher.VerifyHashedPassword(user, hash, "cafe\u0301 au lait, \uff11\uff12 spoons")
        );
        // Nothing is cut off.
        Assert.Equal(
            Microsoft.AspNetCore.Identity.PasswordVerificationResult.Failed,
            hasher.VerifyHashedPassword(user, hash, "caf\u00e9 au lait, 12 spoon")
        );
    }
}
