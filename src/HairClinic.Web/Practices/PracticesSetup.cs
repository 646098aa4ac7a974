using Microsoft.AspNetCore.Components.Server.Circuits;

namespace HairClinic.Web.Practices;

public static class PracticesSetup
{
    /// <summary>The fence: who is acting, and contexts that carry it to the database.</summary>
    public static IServiceCollection AddFence(this IServiceCollection services) =>
        services
            .AddScoped<CurrentActor>()
            .AddScoped<ClinicDbFactory>()
            .AddScoped<SalonNames>()
            .AddScoped<CircuitHandler, ActorCircuitHandler>()
            .AddSingleton<PracticeJobs>();
}
