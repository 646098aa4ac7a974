using HairClinic.Web.Shell;
using Microsoft.AspNetCore.Mvc;

namespace HairClinic.Web.Features.Settings;

public static class DeregisterTabletEndpoint
{
    public static void MapDeregisterTablet(this IEndpointRouteBuilder routes) =>
        routes
            .MapPost(
                "/practice/tablets/end",
                async ([FromForm] Guid tablet, Tablets slice, CancellationToken cancellation) =>
                    await slice.DeregisterAsync(tablet, cancellation) ? Results.LocalRedirect("/practice/tablets") : Results.NotFound()
            )
            .RequireAuthorization(Policies.Manage);
}
