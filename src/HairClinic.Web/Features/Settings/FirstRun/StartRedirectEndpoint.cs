using HairClinic.Web.Fence;
using HairClinic.Web.Shell.SignIn;
using Microsoft.AspNetCore.Authentication;

namespace HairClinic.Web.Features.Settings;

/// <summary>The front door: everybody to the room they work in.</summary>
public static class StartRedirectEndpoint
{
    public static void MapStartRedirect(this IEndpointRouteBuilder routes) =>
        routes
            .MapGet(
                "/",
                async (HttpContext context, PracticePresence presence, SetupProgressReader guide) =>
                    Results.LocalRedirect(await RoomOfAsync(context, presence, guide))
            )
            .AllowAnonymous();

    private static async Task<string> RoomOfAsync(HttpContext context, PracticePresence presence, SetupProgressReader guide)
    {
        if (!await presence.AnyAsync(context.RequestAborted))
            return FirstRunGate.Welcome;
        if (ActorClaims.ToActor(context.User) is PersonActor person)
            return person.StaffRole switch
            {
                StaffRole.Owner when await guide.ReadAsync(context.RequestAborted) is { Finished: false } facts => SetupProgress.PathOf(
                    facts.Next
                ),
                StaffRole.Stylist or StaffRole.Trainee => "/at-the-chair",
                _ => "/due",
            };
        var client = await context.AuthenticateAsync(AccountsSetup.ClientScheme);
        return ActorClaims.ToActor(client.Principal) is ClientActor ? "/my-hair" : "/sign-in";
    }
}
