using HairClinic.Web.Shell;
using Microsoft.AspNetCore.Mvc;

namespace HairClinic.Web.Features.Accounts;

public static class ChooseSalonEndpoint
{
    public static void MapChooseSalon(this IEndpointRouteBuilder routes) =>
        routes
            .MapPost(
                "/choose-salon",
                async ([FromForm] Guid salon, [FromForm] string? returnTo, ChooseSalon slice, CancellationToken cancellation) =>
                    await slice.SaveAsync(salon, cancellation) ? Results.LocalRedirect(LocalPath.OrStart(returnTo)) : Results.NotFound()
            )
            .RequireAuthorization(Policies.Staff);
}
