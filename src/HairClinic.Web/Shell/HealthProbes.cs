using HairClinic.Web.Data;

namespace HairClinic.Web.Shell;

/// <summary>For whoever watches over the program: one word each, and nothing about what is inside.</summary>
public static class HealthProbes
{
    public const string Alive = "/alive";

    public const string Ready = "/ready";

    public static void MapProbes(this IEndpointRouteBuilder routes)
    {
        routes.MapGet(Alive, () => "alive").AllowAnonymous();
        routes
            .MapGet(
                Ready,
                async (ClinicDbFactory databases, CancellationToken cancellation) =>
                {
                    await using var db = databases.OpenWithoutActor();
                    return await db.Database.CanConnectAsync(cancellation)
                        ? Results.Text("ready")
                        : Results.Text("not ready", statusCode: StatusCodes.Status503ServiceUnavailable);
                }
            )
            .AllowAnonymous();
    }
}
