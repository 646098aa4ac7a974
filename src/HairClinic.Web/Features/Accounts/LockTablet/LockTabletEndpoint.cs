using HairClinic.Web.Accounts.Tablets;
using HairClinic.Web.Shell;
using Microsoft.AspNetCore.Mvc;

namespace HairClinic.Web.Features.Accounts;

public static class LockTabletEndpoint
{
    public static void MapLockTablet(this IEndpointRouteBuilder routes)
    {
        routes
            .MapPost(
                "/lock-tablet",
                async ([FromForm] string? from, LockTablet slice, CancellationToken cancellation) =>
                {
                    await slice.SaveAsync(cancellation);
                    return Results.LocalRedirect(TabletStore.SwitchPath(from));
                }
            )
            .RequireAuthorization(Policies.Staff);
        // That somebody touched the screen. It is a request like any other, and that is all it has to be.
        routes.MapPost("/lock-tablet/touch", () => Results.NoContent()).RequireFormToken().RequireAuthorization(Policies.Staff);
    }
}
