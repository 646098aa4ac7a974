namespace HairClinic.Browser.Tests.Stories;

/// <summary>What says that nothing is wrong has to be able to say that something is.</summary>
public sealed class CheckerTests(ChromiumBrowser chromium)
{
    [Fact]
    public async Task The_accessibility_checker_names_a_picture_without_words_and_letters_too_pale()
    {
        var page = await chromium.Browser.NewPageAsync();
        await page.SetContentAsync(
            """
            <html lang="en"><title>Faults</title><main><h1>Faults</h1>
            <img src="data:," width="40" height="40"><p style="color:#bbb;background:#fff">Pale</p></main></html>
            """
        );

        var found = await page.FoundByAxeAsync();

        Assert.Contains(found, f => f.Contains(": image-alt: ", StringComparison.Ordinal) && f.EndsWith("img", StringComparison.Ordinal));
        Assert.Contains(found, f => f.Contains(": color-contrast: ", StringComparison.Ordinal));
        await page.CloseAsync();
    }
}
