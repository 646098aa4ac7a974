using System.CommandLine;

namespace HairClinic.Web.Shell.Verbs;

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
            await app.RunAsync();
            return 0;
        });
        return command;
    }
}
