using HairClinic.Web.Practices;

namespace HairClinic.Web.Shell;

/// <summary>For whoever watches over the program: one word each, and nothing about what is inside.</summary>
public static class Probes
{
    public static void MapProbes(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/alive", () => "alive").AllowAnonymous();
        routes
            .MapGet(
                "/ready",
                async (ClinicDbFactory databases, CancellationToken cancellation) =>
                {
                    await using var db = databases.OpenUnfenced();
                    return await db.Database.CanConnectAsync(cancellation)
                        ? Results.Text("ready")
                        : Results.Text("not ready", statusCode: StatusCodes.Status503ServiceUnavailable);
                }
            )
            .AllowAnonymous();
    }
}
