using HairClinic.Web.Demo;
using Microsoft.Playwright;

namespace HairClinic.Browser.Tests;

/// <summary>How somebody of the demo practice comes in.</summary>
public static class DemoPages
{
    /// <param name="who">The name before the at sign of the demo's sign-ins.</param>
    /// <param name="to">The address they wanted; without, where their role begins.</param>
    public static async Task SignInToDemoAsync(this IPage page, string who, string? to = null)
    {
        await page.GotoAsync(to is null ? "/sign-in" : $"/sign-in?ReturnUrl={to}");
        await page.GetByLabel("Name or e-mail").FillAsync($"{who}@demo.test");
        await page.GetByLabel("Password", new() { Exact = true }).FillAsync(DemoAccounts.Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in", Exact = true }).ClickAsync();
        await page.LeaveAsync("/sign-in");
    }
}
