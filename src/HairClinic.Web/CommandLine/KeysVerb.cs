using System.CommandLine;

namespace HairClinic.Web.CommandLine;

/// <summary>keys: look at the master keys, or put a new one in front.</summary>
public static class KeysVerb
{
    public static Command Command(Func<ParseResult, string[], Task<WebApplication>> open)
    {
        var status = new Command("status", "Say which master keys there are and what still lies under an older one.");
        status.SetAction(async result =>
        {
            await using var app = await open(result, []);
            Write(await app.Services.GetRequiredService<KeyRotation>().ReadStatusAsync(CancellationToken.None));
            return 0;
        });
        var rotate = new Command("rotate", "Add a master key and wrap every client's key anew. Cut short, it goes on when called again.");
        rotate.SetAction(async result =>
        {
            await using var app = await open(result, []);
            var rotation = app.Services.GetRequiredService<KeyRotation>();
            var done = await rotation.RotateMasterKeyAsync(CancellationToken.None);
            var keys = done.Rewrapped.ToString(CultureInfo.InvariantCulture);
            Console.WriteLine(
                done.Added
                    ? $"Added master key {done.CurrentId} and wrapped {keys} client keys under it."
                    : $"Went on with an earlier rotation: wrapped {keys} client keys under {done.CurrentId}. Say it again to add a new key."
            );
            Write(await rotation.ReadStatusAsync(CancellationToken.None));
            Console.WriteLine("Back the key file up now, apart from the database: older backups of it lack the new key.");
            return 0;
        });
        return new Command("keys", "The master keys, which lie in a file outside the database.") { status, rotate };
    }

    private static void Write(KeyRotation.Status status)
    {
        Console.WriteLine(status.File);
        foreach (var key in status.Keys)
        {
            var current = key == status.Keys[^1] ? ", current" : "";
            Console.WriteLine($"  {key.Id}, made {key.Made.ToString("uuuu-MM-dd HH:mm", CultureInfo.InvariantCulture)} UTC{current}");
        }
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{status.ClientKeys} client keys, {status.Destroyed} of them destroyed, {status.Behind} under an older master key."
            )
        );
    }
}
