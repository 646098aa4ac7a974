using System.CommandLine;
using HairClinic.EmbeddedPostgres;
using HairClinic.Web.CommandLine.Analyse;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Sealing;
using Microsoft.AspNetCore.Connections;

namespace HairClinic.Web.CommandLine;

/// <summary>The program's commands. Without one it serves the site.</summary>
public static class Commands
{
    /// <param name="build">Builds the site from host arguments such as --urls.</param>
    /// <returns>0 when done, 1 when it failed, 2 when it was asked for something it does not understand.</returns>
    public static async Task<int> RunAsync(string[] arguments, Func<string[], WebApplication> build)
    {
        var data = new Option<string?>("--data") { Description = "Folder of the program's own PostgreSQL.", Recursive = true };
        var root = new RootCommand("HairClinic: the practice's book.") { data };
        root.Subcommands.Add(ServeVerb.Command(Open));
        root.Subcommands.Add(MigrateVerb.Command(OpenDatabase));
        root.Subcommands.Add(ImportVerb.Command(Open));
        root.Subcommands.Add(ExportVerb.Command(Open));
        root.Subcommands.Add(KeysVerb.Command(Open));
        root.Subcommands.Add(OwnerLinkVerb.Command(Open));
        root.Subcommands.Add(VerifyLogVerb.Command(Open));
        root.Subcommands.Add(DemoBinderVerb.Command());
        root.Subcommands.Add(AnalyseVerb.Command());
        foreach (
            var verb in arguments.Length == 0
            || arguments[0].StartsWith("--", StringComparison.Ordinal) && arguments[0] is not ("--help" or "--version")
                ? ["serve"]
                : Array.Empty<string>()
        )
            arguments = [verb, .. arguments];
        var parsed = root.Parse(arguments);
        if (parsed.Errors.Count > 0 && arguments[0] == AnalyseVerb.Name)
            return AnalyseOutput.WriteUsageErrors(parsed, Console.Error);
        if (parsed.Errors.Count > 0)
        {
            await parsed.InvokeAsync();
            return 2;
        }
        try
        {
            return await parsed.InvokeAsync(new InvocationConfiguration { EnableDefaultExceptionHandler = false });
        }
        catch (Exception e) when (SentenceOf(e) is { } sentence)
        {
            await Console.Error.WriteLineAsync(sentence);
            return 1;
        }

        async Task<WebApplication> Open(ParseResult result, string[] more)
        {
            var app = await OpenDatabase(result, more);
            app.Services.GetRequiredService<MasterKeys>().LoadAndCheck();
            return app;
        }

        // Who only migrates need not hold the keys, and must never make any.
        async Task<WebApplication> OpenDatabase(ParseResult result, string[] more)
        {
            var folder = result.GetValue(data);
            var app = build([.. folder is null ? [] : new[] { $"--data={folder}" }, .. more, .. result.UnmatchedTokens]);
            try
            {
                await app.Services.GetRequiredService<DatabaseLifetime>().OpenAsync(CancellationToken.None);
                return app;
            }
            catch
            {
                await app.DisposeAsync();
                throw;
            }
        }
    }

    /// <summary>What can go wrong without anything in the program being wrong; null for what must show where it broke.</summary>
    private static string? SentenceOf(Exception e) =>
        e switch
        {
            IOException { InnerException: AddressInUseException } =>
                $"{e.Message} Another program listens there: stop it, or choose another address with --urls.",
            _ when ConnectionLoss.Is(e) => $"The database cannot be reached: {e.GetBaseException().Message}",
            NpgsqlException => $"The database refuses: {e.GetBaseException().Message}",
            EmbeddedServerException or InvalidOperationException or IOException or UnauthorizedAccessException or Refusal => e.Message,
            _ => null,
        };
}
