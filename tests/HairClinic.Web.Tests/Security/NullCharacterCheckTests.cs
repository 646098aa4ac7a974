using System.Net;
using System.Text.RegularExpressions;

namespace HairClinic.Web.Tests.Security;

[Collection(LookedAtSite.Name)]
public sealed partial class NullCharacterCheckTests(LookedAtSite looked)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>In pieces: in a form of one piece the framework itself takes no such character.</summary>
    [Fact]
    public async Task A_form_with_a_character_that_is_no_text_is_refused_and_not_stumbled_over()
    {
        var browser = looked.Site.Browser();
        var mark = Mark().Match(await browser.GetStringAsync("/my-hair/ask-link", Cancel)).Groups[1].Value;
        using var form = new MultipartFormDataContent
        {
            { new StringContent("ask-link"), "_handler" },
            { new StringContent(mark), "__RequestVerificationToken" },
            { new StringContent("x@example\0test"), "Input.Email" },
        };

        using var answer = await browser.PostAsync("/my-hair/ask-link", form, Cancel);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("Nothing was saved", await answer.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/my-hair/preferences")]
    [InlineData("/sign-out")]
    public async Task A_form_that_cannot_be_read_is_refused(string path)
    {
        var client = await looked.Site.OpenLinkAsync(looked.Site.Here.Own.Client);
        using var form = new StringContent("_handler=%00", null, "application/x-www-form-urlencoded");

        using var answer = await client.PostAsync(path, form, Cancel);

        Assert.True((int)answer.StatusCode < 500, $"{answer.StatusCode}");
    }

    [Fact]
    public async Task So_is_an_address()
    {
        using var answer = await looked.Site.Browser().GetAsync("/my-hair/ask-link?after=%00", Cancel);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"([^\"]+)")]
    private static partial Regex Mark();
}
