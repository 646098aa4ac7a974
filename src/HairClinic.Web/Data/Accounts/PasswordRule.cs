using FluentValidation;

namespace HairClinic.Web.Data.Accounts;

/// <summary>What a password must be, in one sentence: length counts, composition does not (NIST SP 800-63B-4).</summary>
public static class PasswordRule
{
    public const string Sentence = "A password has at least 15 letters, five of them different. Three or four words in a row do well.";

    public static IRuleBuilderOptions<T, string?> Password<T>(this IRuleBuilder<T, string?> rule) =>
        rule.Must(p => p is { Length: >= 15 and <= 256 } && p.Distinct().Count() >= 5).WithMessage(Sentence);

    /// <summary>A name to sign in with: letters and digits, and the signs of an e-mail address.</summary>
    public static IRuleBuilderOptions<T, string> SignInName<T>(this IRuleBuilder<T, string> rule) =>
        rule.Matches("^[a-zA-Z0-9._@+-]{2,100}$")
            .WithMessage("A name to sign in with has letters, digits and . _ - @ + only, such as an e-mail address.");
}
