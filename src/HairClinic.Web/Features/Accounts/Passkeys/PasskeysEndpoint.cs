using HairClinic.Web.Accounts;
using HairClinic.Web.Shell;
using HairClinic.Web.Shell.Limits;
using Microsoft.AspNetCore.Mvc;

namespace HairClinic.Web.Features.Accounts;

public static class PasskeysEndpoint
{
    private const string Page = "/my-sign-in/passkeys";

    public static void MapPasskeys(this IEndpointRouteBuilder routes)
    {
        // Asked without a name: the device says whose passkey it holds.
        routes
            .MapPost(
                "/passkey/request",
                async (StaffSignInManager accounts) => Json(await accounts.MakePasskeyRequestOptionsAsync(user: null))
            )
            .RequireFormToken()
            .AllowAnonymous()
            .WithMetadata(new RateLimitedAttribute(LimitedAction.SignIn));
        routes
            .MapPost(
                "/passkey/creation",
                async (Passkeys slice, CancellationToken cancellation) => Json(await slice.MakeCreationOptionsAsync(cancellation))
            )
            .RequireFormToken()
            .RequireAuthorization(Policies.Staff)
            .WithMetadata(new StepUpAttribute());
        routes
            .MapPost(
                Page + "/rename",
                async ([FromForm] string id, [FromForm] string? name, Passkeys slice, CancellationToken cancellation) =>
                {
                    await slice.RenameAsync(id, name ?? "", cancellation);
                    return Results.LocalRedirect(Page);
                }
            )
            .RequireAuthorization(Policies.Staff);
        routes
            .MapPost(
                Page + "/remove",
                async ([FromForm] string id, Passkeys slice, CancellationToken cancellation) =>
                {
                    await slice.RemoveAsync(id, cancellation);
                    return Results.LocalRedirect(Page);
                }
            )
            .RequireAuthorization(Policies.Staff)
            .WithMetadata(new StepUpAttribute());
    }

    private static IResult Json(string json) => Results.Content(json, "application/json");
}
