using System.Net;
using System.Text.RegularExpressions;
using HairClinic.Domain.Practices;
using HairClinic.Web.Tests.Security;

namespace HairClinic.Web.Tests.Features.Clients.Find;

/// <summary>
/// Somebody knows the code of another salon's client and asks on, letter by letter. tests/drills/probe-find.py does the same, longer,
/// to a running site.
/// </summary>
public sealed partial class FindProbeTests(PgServer server)
{
    private const string Alphabet = "abcdefghijklmnopqrstuvwxyz0123456789";

    [Fact]
    public async Task Whatever_is_typed_beside_a_known_code_of_another_salon_the_answer_is_the_same()
    {
        await using var site = await ClinicSite.OpenAsync(server);
        var hidden = site.Elsewhere.Own.Client;
        var code = hidden.Code.Replace("-", "", StringComparison.Ordinal);
        var desk = await site.SignInAsync(ClinicSite.NameOf(site.Here.Staff[StaffRole.FrontDesk]));

        var answers = new Dictionary<string, string>();
        foreach (var typed in Prefixes(hidden.Name, hidden.Email!).Select(p => $"{code} {p}").Append(code).Append($"{code[..^1]}0"))
            answers[typed] = await AnswerAsync(desk, typed);

        Assert.True(answers.Count > 60, $"Only {answers.Count} were asked.");
        Assert.Contains("Nobody found", answers[code], StringComparison.Ordinal);
        Assert.All(answers, answer => Assert.Equal(answers[code], answer.Value));
    }

    // Each beginning of what there is, right, and a letter further each time, wrong but for one.
    private static IEnumerable<string> Prefixes(string name, string email) =>
        name.Split(' ')
            .Append(email.Split('@')[0])
            .Select(w => w.ToLowerInvariant())
            .SelectMany(word => Enumerable.Range(1, word.Length).Select(length => word[..length]))
            .Concat(Alphabet.SelectMany(letter => new[] { $"{letter}", $"{name[..6].ToLowerInvariant()}{letter}" }))
            .Distinct();

    private static async Task<string> AnswerAsync(HttpClient browser, string typed)
    {
        var answer = await browser.GetAsync($"/find?q={Uri.EscapeDataString(typed)}", TestContext.Current.CancellationToken);
        var text = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        // Twice escaped it stands in the link that leads back here after a sign-in.
        var escaped = Uri.EscapeDataString(typed);
        string[] spellings = [WebUtility.HtmlEncode(typed), Uri.EscapeDataString(escaped), escaped, WebUtility.UrlEncode(typed)];
        foreach (var spelling in spellings)
            text = text.Replace(spelling, "?", StringComparison.OrdinalIgnoreCase);
        return $"{(int)answer.StatusCode} {EachTimeAnew().Replace(text, "")}";
    }

    // What differs between any two answers: sealed marks of forms, and what the framework leaves in comments.
    [GeneratedRegex(@"CfDJ8[\w-]+|<!--.*?-->|nonce=""[^""]*""", RegexOptions.Singleline)]
    private static partial Regex EachTimeAnew();
}
