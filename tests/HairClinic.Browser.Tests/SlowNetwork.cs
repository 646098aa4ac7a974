using Microsoft.Playwright;

namespace HairClinic.Browser.Tests;

/// <summary>A page on a line as a salon's cellar has it.</summary>
public static class SlowNetwork
{
    /// <summary>From now on it is reached over a slow line: 400 ms there and back, 50 KiB in a second.</summary>
    public static async Task SlowAsync(this IPage page)
    {
        var line = await page.Context.NewCDPSessionAsync(page);
        await line.SendAsync("Network.enable");
        await line.SendAsync(
            "Network.emulateNetworkConditions",
            new()
            {
                ["offline"] = false,
                ["latency"] = 400,
                ["downloadThroughput"] = 50 * 1024,
                ["uploadThroughput"] = 50 * 1024,
            }
        );
    }
}
