using HairClinic.Web.Data.Accounts;
using HairClinic.Web.Features.Accounts.ChooseSalon;
using HairClinic.Web.Features.Accounts.LookAgain;
using Microsoft.AspNetCore.Identity;

namespace HairClinic.Web.Features.Accounts;

public static class AccountsArea
{
    public static IServiceCollection AddAccountsArea(this IServiceCollection services) =>
        services
            .AddScoped<SignIn.SignIn>()
            .AddSingleton<SignIn.SignInRules>()
            .AddScoped<AccountBook>()
            .AddScoped<GiveAccount.GiveAccount>()
            .AddSingleton<GiveAccount.GiveAccountRules>()
            .AddScoped<SetPassword.SetPassword>()
            .AddSingleton<SetPassword.SetPasswordRules>()
            .AddScoped<ChangePassword.ChangePassword>()
            .AddSingleton<ChangePassword.ChangePasswordRules>()
            .AddScoped<ChooseSalon.ChooseSalon>();

    public static void MapAccounts(this IEndpointRouteBuilder routes)
    {
        routes.MapChooseSalon();
        routes.MapLookAgain();
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
}
