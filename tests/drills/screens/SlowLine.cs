using System.Reflection;
using System.Text.Json;
using HairClinic.Browser.Tests;
using HairClinic.Web;
using Microsoft.AspNetCore.Components;
using Microsoft.Playwright;

namespace HairClinic.ScreenDrill;

/// <summary>
/// On a line of 400 ms and 50 KiB/s every control of every live screen a role has is typed into and tapped twice as soon as it is drawn.
/// Each must then stand as typed and be heard once, or have shown at once that it was not ready and be told of.
/// </summary>
internal static class SlowLine
{
    private static readonly string[] Routes =
    [
        .. typeof(Clinic)
            .Assembly.GetTypes()
            .SelectMany(t => t.GetCustomAttributes<RouteAttribute>())
            .Select(r => r.Template)
            .Where(r => !r.StartsWith("/first-run/", StringComparison.Ordinal) && !r.StartsWith("/my-hair", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal),
    ];

    public static async Task<bool> RunAsync(Report report, string[] roles)
    {
        await using var practice = await Practice.OpenAsync();
        var ids = await practice.IdsAsync();
        var script = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "slow-line.js"));
        var (controls, lost, toldOf, hidden) = (0, 0, 0, 0);
        foreach (var role in roles)
        {
            var page = await practice.SignInAsync(role);
            await page.AddInitScriptAsync(script);
            // What a browser keeps of the site is there, as on any day but the first.
            await page.GotoAsync("/day");
            await page.SlowAsync();
            var screens = 0;
            foreach (var route in Routes)
            {
                var path = RouteIds.PathOf(route, ids);
                if (await TryAsync(page, path) is not { } tried)
                    continue;
                screens++;
                controls += tried.Controls;
                hidden += tried.Hidden;
                foreach (var wrong in tried.Wrong)
                    report.Say($"{role} {route}: {(tried.Said ? "told of" : "LOST")}: {wrong}");
                if (tried.Said)
                    toldOf += tried.Wrong.Length;
                else
                    lost += tried.Wrong.Length;
            }
            report.Say($"{role}: {screens} live screens");
            await page.Context.CloseAsync();
        }
        report.Say(
            $"{controls} controls tapped or typed into as soon as they were drawn, {lost} lost or done twice, {toldOf} not done and told of, {hidden} taken off the page by a later choice"
        );
        return lost == 0 && controls > 0;
    }

    private static async Task<(int Controls, string[] Wrong, bool Said, int Hidden)?> TryAsync(IPage page, string path)
    {
        await page.GotoAsync(path, new() { WaitUntil = WaitUntilState.Commit });
        // A page that has no live part, or is not this role's, is no screen to try.
        try
        {
            await page.WaitForFunctionAsync(
                "() => drill.isDrawn() || document.readyState === 'complete'",
                null,
                new() { Timeout = 30_000 }
            );
        }
        catch (TimeoutException)
        {
            return null;
        }
        if (
            await page.EvaluateAsync<string?>("() => { globalThis.done = drill.tapAll(); return done && JSON.stringify(done); }")
            is not { } tapped
        )
            return null;
        var done = JsonDocument.Parse(tapped).RootElement;
        var controls =
            done.GetProperty("fields").GetArrayLength() + done.GetProperty("taps").EnumerateObject().Sum(t => t.Value.GetInt32());
        await page.WaitForFunctionAsync("() => !document.querySelector('[data-interactive=false]')", null, new() { Timeout = 60_000 });
        // A line there and back, twice, or until what has no place is given up.
        await page.WaitForTimeoutAsync(2_500);
        var seen = await LookAsync(page);
        if (seen.Wrong.Length > 0 && !seen.Said)
        {
            await page.WaitForTimeoutAsync(10_000);
            seen = await LookAsync(page);
        }
        return (controls, seen.Wrong, seen.Said, seen.Hidden);
    }

    private static async Task<(string[] Wrong, bool Said, int Hidden)> LookAsync(IPage page)
    {
        var seen = JsonDocument.Parse(await page.EvaluateAsync<string>("() => JSON.stringify(drill.look(done))")).RootElement;
        return (
            [.. seen.GetProperty("wrong").EnumerateArray().Select(w => w.GetString()!)],
            seen.GetProperty("said").GetBoolean(),
            seen.GetProperty("hidden").GetInt32()
        );
    }
}
