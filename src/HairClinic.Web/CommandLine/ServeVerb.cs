using System.CommandLine;
using HairClinic.Web.Demo;
using HairClinic.Web.Mail;

namespace HairClinic.Web.CommandLine;

/// <summary>serve: the site.</summary>
public static class ServeVerb
{
    public static Command Command(Func<ParseResult, string[], Task<WebApplication>> open)
    {
        var demo = new Option<bool>("--demo") { Description = "Fill an empty database with the invented demo practice." };
        var empty = new Option<bool>("--empty") { Description = "Begin with the first-run guide (what an empty database does anyway)." };
        var command = new Command("serve", "Serve the site.") { demo, empty };
        command.TreatUnmatchedTokensAsErrors = false;
        command.SetAction(async result =>
        {
            await using var app = await open(result, []);
            // A setting that cannot be meant stops the start, not the first letter.
            _ = app.Services.GetRequiredService<MailSettings>();
            if (result.GetValue(demo))
                await FillAsync(app);
            await app.RunAsync();
            return 0;
        });
        return command;
    }

    private static async Task FillAsync(WebApplication app)
    {
        if (await app.Services.GetRequiredService<DemoSeeder>().FillAsync(CancellationToken.None) is not { } filled)
        {
            Console.WriteLine("This database holds a practice already; it was left as it is.");
            return;
        }
        var rows = string.Join(", ", filled.Sheets.Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.New} {s.Sheet}")));
        Console.WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"The demo practice was filled in {filled.Took.TotalSeconds:0.0} s: {rows}.")
        );
        foreach (var signIn in DemoAccounts.All)
            Console.WriteLine($"  {signIn.Name} ({signIn.Person}, {signIn.Role})");
        Console.WriteLine($"The password of each is {DemoAccounts.Password}");
    }
}
