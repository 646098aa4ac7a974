using Microsoft.AspNetCore.Components.Server;
using Microsoft.AspNetCore.SignalR;

namespace HairClinic.Web.Shell.Limits;

/// <summary>What one live screen may cost. How many there may be at once is counted in <see cref="RateLimits"/>.</summary>
public static class CircuitLimits
{
    public static IServiceCollection AddCircuitLimits(this IServiceCollection services) =>
        services
            .Configure<CircuitOptions>(circuit =>
            {
                circuit.DetailedErrors = false;
                // A tablet carried through the house loses its network for a minute or two; a closed lid does not come back.
                circuit.DisconnectedCircuitRetentionPeriod = TimeSpan.FromMinutes(3);
                // About 0.1 MB each (measured): 40 MB at most for screens that may never return.
                circuit.DisconnectedCircuitMaxRetained = 400;
                // A browser that takes in nothing any more is let go, not drawn for.
                circuit.MaxBufferedUnacknowledgedRenderBatches = 10;
                circuit.JSInteropDefaultCallTimeout = TimeSpan.FromSeconds(30);
            })
            .Configure<HubOptions>(hub =>
            {
                // Files come in pieces below this; nothing typed here is longer.
                hub.MaximumReceiveMessageSize = 32 * 1024;
                hub.HandshakeTimeout = TimeSpan.FromSeconds(10);
                hub.ClientTimeoutInterval = TimeSpan.FromSeconds(30);
                hub.MaximumParallelInvocationsPerClient = 1;
                hub.StreamBufferCapacity = 10;
                hub.EnableDetailedErrors = false;
            });
}
