using HairClinic.Web.Shell;
using Microsoft.AspNetCore.Mvc;

namespace HairClinic.Web.Features.Accounts;

public static class EndSessionsEndpoint
{
    public static void MapMySignIn(this IEndpointRouteBuilder routes) =>
        routes
            .MapPost(
                "/my-sign-in/end-session",
                async ([FromForm] Guid? place, MySignIn slice, CancellationToken cancellation) =>
                {
                    await slice.EndSessionsAsync(place, cancellation);
                    return Results.LocalRedirect("/my-sign-in");
                }
            )
            .RequireAuthorization(Policies.Staff);
}
