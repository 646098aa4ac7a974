using HairClinic.Web.Data.Accounts;
using HairClinic.Web.Shell;
using Microsoft.AspNetCore.Identity;

namespace HairClinic.Web.Features.Accounts.LookAgain;

/// <summary>Reads afresh who is signed in and where they work, and goes on: after a salon was opened, the sign-in must know it.</summary>
public static class LookAgainEndpoint
{
    public static void MapLookAgain(this IEndpointRouteBuilder routes) =>
        routes
            .MapGet(
                "/look-again",
                async (string? returnTo, HttpContext context, SignInManager<AppUser> accounts) =>
                {
                    if (await accounts.UserManager.GetUserAsync(context.User) is { } user)
                        await accounts.RefreshSignInAsync(user);
                    return Results.LocalRedirect(LocalPath.OrStart(returnTo));
                }
            )
            .RequireAuthorization(Policies.Staff);
}
