using HairClinic.Web.Data.Accounts;
using HairClinic.Web.Features.Accounts.ChooseSalon;
using HairClinic.Web.Features.Accounts.LookAgain;
using HairClinic.Web.Features.Accounts.MySignIn;
using HairClinic.Web.Features.Accounts.Passkeys;
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
            .AddScoped<ChooseSalon.ChooseSalon>()
            .AddScoped<OwnAccount>()
            .AddScoped<SignInCode.SignInCode>()
            .AddScoped<StepUp.StepUp>()
            .AddScoped<MySignIn.MySignIn>()
            .AddScoped<AddCodes.AddCodes>()
            .AddScoped<RemoveCodes.RemoveCodes>()
            .AddScoped<NewRecoveryCodes.NewRecoveryCodes>()
            .AddScoped<Passkeys.Passkeys>();

    public static void MapAccounts(this IEndpointRouteBuilder routes)
    {
        routes.MapChooseSalon();
        routes.MapLookAgain();
        routes.MapMySignIn();
        routes.MapPasskeys();
        routes
            .MapPost(
                "/sign-out",
                async (SignInManager<AppUser> accounts) =>
                {
                    await accounts.SignOutAsync();
                    return Results.LocalRedirect("/sign-in");
                }
            )
            .AskForMark()
            .AllowAnonymous();
    }
}
