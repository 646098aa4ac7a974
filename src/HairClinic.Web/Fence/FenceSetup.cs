using Microsoft.AspNetCore.Components.Server.Circuits;

namespace HairClinic.Web.Fence;

public static class FenceSetup
{
    /// <summary>Who is acting.</summary>
    public static IServiceCollection AddFence(this IServiceCollection services) =>
        services.AddScoped<CurrentActor>().AddScoped<CircuitHandler, ActorCircuitHandler>();
}
