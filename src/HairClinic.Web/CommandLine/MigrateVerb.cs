using System.CommandLine;

namespace HairClinic.Web.CommandLine;

/// <summary>migrate: bring the schema up to date and stop.</summary>
public static class MigrateVerb
{
    public static Command Command(Func<ParseResult, string[], Task<WebApplication>> open)
    {
        var command = new Command("migrate", "Bring the database's schema up to date, as the migrator.");
        command.SetAction(async result =>
        {
            // Opening the database migrates it.
            await using var app = await open(result, []);
            Console.WriteLine("The database is up to date.");
            return 0;
        });
        return command;
    }
}
