using System.Diagnostics;
using Microsoft.EntityFrameworkCore;
using Microsoft.Playwright;

namespace HairClinic.ScreenDrill;

/// <summary>
/// At each of thirteen forms with text in them the database goes away, and separately the site begins anew. Nothing typed is lost, one tap
/// saves, and there is one effect: one key of a write more in the book.
/// </summary>
internal static class Outage
{
    /// <param name="Field">Where the text goes.</param>
    /// <param name="More">What else the form needs before it can be saved.</param>
    private sealed record Form(string Name, string Who, string Path, string Field, string Save, Func<IPage, Task>? More = null);

    public static async Task<bool> RunAsync(Report report, int[] seconds)
    {
        await using var practice = await Practice.OpenAsync();
        var wrong = 0;
        foreach (var away in seconds.Select(s => (int?)s).Append(null))
        {
            var round = away is { } s ? $"database away {s} s" : "site begun anew";
            foreach (var (form, number) in (await FormsAsync(practice)).Select((f, i) => (f, i)))
            {
                var watch = Stopwatch.StartNew();
                string said;
                try
                {
                    said = await TryAsync(practice, form, away, $" {away ?? 0}{number}") ?? "ok";
                }
                catch (Exception e) when (e is TimeoutException or PlaywrightException)
                {
                    said = $"WRONG: {e.Message.Split('\n')[0]}";
                }
                wrong += said == "ok" ? 0 : 1;
                report.Say($"{round}, {form.Name}: {said} ({watch.Elapsed.TotalSeconds:F0} s)");
            }
        }
        report.Say($"{wrong} wrong");
        return wrong == 0;
    }

    private static async Task<string?> TryAsync(Practice practice, Form form, int? away, string mark)
    {
        var page = await practice.SignInAsync(form.Who);
        try
        {
            await page.GotoAsync(form.Path);
            await page.Locator("[data-interactive=true]").First.WaitForAsync(new() { State = WaitForSelectorState.Attached });
            var field = page.Locator(form.Field);
            var before = await field.InputValueAsync();
            await field.PressAsync("End");
            await field.PressSequentiallyAsync($"{mark} b", new() { Delay = 30 });
            if (form.More is not null)
                await form.More(page);
            var writes = await WritesAsync(practice);
            if (away is { } seconds)
            {
                var lost = await practice.Site.LoseDatabaseAsync();
                await field.PressAsync("End");
                await field.PressSequentiallyAsync("d", new() { Delay = 30 });
                await page.WaitForTimeoutAsync(seconds * 500);
                await page.Locator(form.Save).First.ClickAsync();
                await page.GetByText("Not saved yet").First.WaitForAsync();
                if (await field.InputValueAsync() is var held && !held.EndsWith($"{mark} bd", StringComparison.Ordinal))
                    return $"WRONG: typed {before}{mark} bd, stands {held}";
                await page.WaitForTimeoutAsync(seconds * 500);
                await lost.DisposeAsync();
            }
            else
            {
                // A draft of the book's is kept a moment after the last key.
                await page.WaitForTimeoutAsync(1_500);
                await page.EvaluateAsync("window.before = true");
                await practice.Site.RestartAsync();
                // A page tries its line more and more seldom, up to each half minute.
                await page.WaitForFunctionAsync(
                    "() => !window.before && document.querySelector('[data-interactive=true]')",
                    null,
                    new() { Timeout = 180_000 }
                );
                await page.GetByText("What you typed before is here again.").Locator("visible=true").First.WaitForAsync();
                if (await field.InputValueAsync() is var held && !held.EndsWith($"{mark} b", StringComparison.Ordinal))
                    return $"WRONG: typed {before}{mark} b, stands {held}";
                await page.Locator(form.Save).First.ClickAsync();
            }
            for (var tries = 0; await WritesAsync(practice) == writes; tries++)
            {
                if (tries == 300)
                    return $"WRONG: nothing was saved; the page says {(await page.Locator("main").InnerTextAsync()).ReplaceLineEndings(" ")[..200]}";
                await Task.Delay(100);
            }
            await page.WaitForTimeoutAsync(3_000);
            var effects = await WritesAsync(practice) - writes;
            return effects == 1 ? null : $"WRONG: {effects} effects";
        }
        finally
        {
            await page.Context.CloseAsync();
        }
    }

    private static Task<int> WritesAsync(Practice practice) => practice.ReadAsync(db => db.WriteKeys.CountAsync());

    // Another day each time: the same promise twice is refused.
    private static Task FillPromiseAsync(IPage page) =>
        page.Locator("#f-PromisedFor").FillAsync($"2027-{Random.Shared.Next(4, 13):00}-{Random.Shared.Next(1, 29):00}");

    private static async Task<Form[]> FormsAsync(Practice practice)
    {
        var ids = await practice.IdsAsync();
        var client = ids["ClientId"];
        const string save = "main form[method=dialog] button[type=submit]";
        return
        [
            new("add a client", "desk", "/clients/add-client", "#f-Name", save),
            new("change a client", "desk", $"/clients/{client}/edit-client", "#f-Name", save),
            new("a workshop", "owner", $"/practice/edit-workshop/{ids["workshop"]}", "#f-Name", save),
            new("a product", "owner", $"/practice/edit-product/{ids["product"]}", "#f-Name", save),
            new("a service", "owner", $"/practice/edit-service/{ids["service"]}", "#f-Name", save),
            new("a kind of unit", "owner", $"/practice/edit-unit-kind/{ids["unit-kind"]}", "#f-Name", save),
            new("a base", "owner", $"/practice/edit-base-material/{ids["base-material"]}", "#f-Name", save),
            new("health answers", "stylist", $"/clients/{client}/health-answers", "#f-Habits", save),
            new(
                "add a unit",
                "desk",
                $"/units/add-unit?client={client}",
                "#f-Serial",
                save,
                async page =>
                {
                    await page.Locator("#f-Origin label").First.ClickAsync();
                    await page.Locator("#f-UnitKindId").SelectOptionAsync(new SelectOptionValue { Index = 1 });
                }
            ),
            new("a question of the workshop", "desk", $"/units/{ids["UnitId"]}/ask-about-unit", "#f-Text", save),
            new("a step of a unit", "desk", $"/units/{ids["UnitId"]}/take-step?step=Promised", "#f-SaidBy", save, FillPromiseAsync),
            new("book a visit", "desk", $"/visits/book-visit?client={client}", "#f-Note", "button.slot"),
            new(
                "log a rebond",
                "owner",
                $"/visits/{ids["VisitId"]}/log-rebond",
                "#f-Note",
                save,
                async page =>
                {
                    await page.GetByText("No, sound").ClickAsync();
                    await page.GetByText("Waits kept").ClickAsync();
                    await page.GetByRole(AriaRole.Button, new() { Name = "All as new" }).ClickAsync();
                }
            ),
        ];
    }
}
