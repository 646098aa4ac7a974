using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace HairClinic.Browser.Tests;

/// <summary>The accessibility checker, run inside the page it looks at: its usual runner opens a page of its own for every look.</summary>
public static class Axe
{
    private const string Look = """
        async () => (await axe.run(document, { resultTypes: ['violations'] })).violations
            .map(v => `${location.href}: ${v.id}: ${v.help}: ${v.nodes.map(n => n.target.join(' ')).join(', ')}`)
        """;

    private static readonly string Script = new BundledAxeScriptProvider().GetScript();

    /// <summary>It finds nothing; what it finds is named.</summary>
    public static async Task NothingForAxeAsync(this IPage page) => Assert.Empty(await page.FoundByAxeAsync());

    public static async Task<IReadOnlyList<string>> FoundByAxeAsync(this IPage page)
    {
        // Between the drawn page and the live one there is a moment without content: judge what people get to see, which is what stays.
        var found = await page.LookAsync();
        if (found.Length == 0)
            return found;
        await page.WaitForTimeoutAsync(1_000);
        return await page.LookAsync();
    }

    private static async Task<string[]> LookAsync(this IPage page)
    {
        await page.Locator("h1").First.WaitForAsync();
        if (!await page.EvaluateAsync<bool>("'axe' in window"))
            await page.EvaluateAsync(Script);
        return await page.EvaluateAsync<string[]>(Look);
    }
}
