using HairClinic.Web.Accounts.Passwords;

namespace HairClinic.Web.Accounts;

/// <summary>
/// What a password must be, by NIST SP 800-63B-4: long enough, and not one that is guessed first. Nothing is asked about which kinds of
/// signs it is made of, and a refusal says why.
/// </summary>
public static class PasswordRule
{
    public const int Least = 15;
    public const int Most = 256;

    public const string TooShort = "A password has at least 15 letters. Three or four words in a row do well.";
    public const string TooLong = "A password has at most 256 letters.";
    public const string Unkept = "This holds a sign that cannot be kept. Type it again.";
    public const string Repeats =
        "This says the same short thing again and again, and is guessed early. Three or four words in a row do well.";
    public const string IsWalk =
        "This runs along the keyboard or the alphabet, and is guessed early. Three or four words in a row do well.";
    public const string IsListed =
        "This is mostly a password that many people have used, and is guessed early. Three or four other words in a row do well.";
    public const string IsNamed =
        "This is mostly a name or address that belongs to you or the practice, and is guessed early. Three or four other words in a row do well.";

    /// <summary>What must be left when a name or a listed password is taken out, in letters: two short words.</summary>
    private const int Rest = 8;

    // The swaps everybody makes, so everybody's guesses make them too.
    private const string Swapped = "@4310!$57+8";
    private const string Meant = "aaeioissttb";

    /// <summary>One form for what looks the same, however a keyboard sends it (NFKC). Null where it is not text.</summary>
    public static string? Normalize(string password)
    {
        try
        {
            return password.Normalize(NormalizationForm.FormKC);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    /// <param name="names">Of the person, the account, the practice and its salons.</param>
    /// <returns>Why it will not do; null when it will.</returns>
    public static string? Fault(string? password, IEnumerable<string?> names)
    {
        if (Normalize(password ?? "") is not { } normal)
            return Unkept;
        var length = normal.EnumerateRunes().Count();
        if (length is < Least or > Most)
            return length < Least ? TooShort : TooLong;
        var text = normal.ToLowerInvariant();
        if (IsRepeated(text))
            return Repeats;
        if (CommonPasswords.Holds(text))
            return IsListed;
        var walked = KeyboardRuns.Mark(text);
        if (text.Where((sign, i) => !walked[i] && !char.IsWhiteSpace(sign)).Count() < Rest - 2)
            return IsWalk;
        var own = names.SelectMany(Words).Distinct().OrderByDescending(w => w.Length).ToList();
        foreach (var reading in new[] { text, string.Concat(text.Select(Unswap)) })
        {
            var letters = string.Concat(reading.Where((sign, i) => !walked[i] && char.IsLetter(sign)));
            var unnamed = own.Aggregate(letters, (left, word) => left.Replace(word, "", StringComparison.Ordinal));
            if (unnamed.Length < letters.Length && unnamed.Length < Rest)
                return IsNamed;
            if (IsMostlyListed(letters))
                return IsListed;
        }
        return null;
    }

    /// <param name="names">What the form itself says about names; those in the book are checked when it is set.</param>
    public static IRuleBuilderOptionsConditions<T, string?> Password<T>(
        this IRuleBuilder<T, string?> rule,
        Func<T, IEnumerable<string?>>? names = null
    ) =>
        rule.Custom(
            (password, context) =>
            {
                if (Fault(password, names?.Invoke(context.InstanceToValidate) ?? []) is { } fault)
                    context.AddFailure(fault);
            }
        );

    /// <summary>A name to sign in with: letters and digits, and the signs of an e-mail address.</summary>
    public static IRuleBuilderOptions<T, string> MustBeSignInName<T>(this IRuleBuilder<T, string> rule) =>
        rule.Matches("^[a-zA-Z0-9._@+-]{2,100}$")
            .WithMessage("A name to sign in with has letters, digits and . _ - @ + only, such as an e-mail address.");

    // One of them with padding, or two in a row: both are tried long before a third word would be.
    private static bool IsMostlyListed(string letters)
    {
        if (CommonPasswords.LongestIn(letters) is not { } first)
            return false;
        var without = letters.Replace(first, "", StringComparison.Ordinal);
        if (without.Length < Rest)
            return CommonPasswords.LongestIn(without) is not null || first.Length >= 6;
        return CommonPasswords.LongestIn(without) is { } second && without.Replace(second, "", StringComparison.Ordinal).Length < Rest / 2;
    }

    private static bool IsRepeated(string text) =>
        Enumerable
            .Range(1, Rest - 1)
            .Any(unit => unit * 2 <= text.Length && Enumerable.Range(unit, text.Length - unit).All(i => text[i] == text[i - unit]));

    private static IEnumerable<string> Words(string? name)
    {
        var words = string.Concat((name ?? "").ToLowerInvariant().Select(c => char.IsLetter(c) ? c : ' '))
            .Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words.Append(string.Concat(words)).Where(w => w.Length >= 3);
    }

    private static char Unswap(char sign) => Swapped.IndexOf(sign, StringComparison.Ordinal) is >= 0 and var i ? Meant[i] : sign;
}
