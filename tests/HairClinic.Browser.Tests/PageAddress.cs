using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace HairClinic.Browser.Tests;

/// <summary>Where a page is, once it is there.</summary>
public static class PageAddress
{
    /// <summary>
    /// Waits until the page is at an address, with its query. The page itself is asked, again and again: Playwright's own
    /// waiting for an address goes by events, and now and then misses that of a page that was loaded in that moment.
    /// </summary>
    /// <param name="path">From the first slash on; a star stands for anything.</param>
    public static Task ArriveAsync(this IPage page, string path) =>
        page.BeAtAsync("^https?://[^/]+" + Regex.Escape(path).Replace(@"\*", ".*", StringComparison.Ordinal) + "$");

    /// <summary>Waits until the page is at any address but those that begin so.</summary>
    public static Task LeaveAsync(this IPage page, string path) => page.BeAtAsync($"^https?://[^/]+(?!{Regex.Escape(path)})/");

    private static Task BeAtAsync(this IPage page, string pattern) =>
        Assertions.Expect(page).ToHaveURLAsync(new Regex(pattern), new() { Timeout = 60_000 });
}
