using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace HairClinic.Web.Features.Settings;

/// <summary>Says on the console where to begin, when there is no practice yet.</summary>
public sealed class FirstRunNotice(SetupCode code, PracticePresence presence, IServer server, IHostApplicationLifetime life)
    : BackgroundService
{
    private static readonly string[] Everywhere = ["0.0.0.0", "[::]", "*", "+"];

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var listening = new TaskCompletionSource<bool>();
        await using var onStart = life.ApplicationStarted.Register(() => listening.TrySetResult(true));
        await using var onStop = stoppingToken.Register(() => listening.TrySetResult(false));
        if (await listening.Task && !await presence.AnyAsync(stoppingToken))
            Console.WriteLine(
                $"""

                Nobody practises here yet. Set up your practice in a browser:

                    {Address()}{FirstRunGate.Welcome}?code={code.Value}

                The code works once and only until this program stops.

                """
            );
    }

    // An address that listens everywhere is no address to visit.
    private string Address()
    {
        var first = server.Features.Get<IServerAddressesFeature>()?.Addresses.FirstOrDefault() ?? "";
        return Everywhere.Aggregate(
            first.TrimEnd('/'),
            (address, any) => address.Replace($"//{any}", "//localhost", StringComparison.Ordinal)
        );
    }
}
