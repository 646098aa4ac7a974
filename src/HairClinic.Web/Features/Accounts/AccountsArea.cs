using HairClinic.Web.Data.Accounts;
using Microsoft.AspNetCore.Identity;

namespace HairClinic.Web.Features.Accounts;

public static class AccountsArea
{
    public static IServiceCollection AddAccountsArea(this IServiceCollection services) =>
        services.AddScoped<SignIn.SignIn>().AddSingleton<SignIn.SignInRules>();

    public static void MapAccounts(this IEndpointRouteBuilder routes) =>
        routes
            .MapPost(
                "/sign-out",
                async (SignInManager<AppUser> accounts) =>
                {
                    await accounts.SignOutAsync();
                    return Results.LocalRedirect("/sign-in");
                }
            )
            .WithMetadata(new Microsoft.AspNetCore.Antiforgery.RequireAntiforgeryTokenAttribute())
            .AllowAnonymous();
}
