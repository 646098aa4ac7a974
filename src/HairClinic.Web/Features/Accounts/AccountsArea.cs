using HairClinic.Web.Accounts;
using HairClinic.Web.Accounts.Tablets;
using HairClinic.Web.Data.Rows;

namespace HairClinic.Web.Features.Accounts;

public static class AccountsArea
{
    public static IServiceCollection AddAccountsArea(this IServiceCollection services) =>
        services
            .AddScoped<SignIn>()
            .AddSingleton<SignInRules>()
            .AddScoped<AccountFactory>()
            .AddScoped<OwnerLink>()
            .AddScoped<GiveAccount>()
            .AddSingleton<GiveAccountRules>()
            .AddScoped<SetPassword>()
            .AddSingleton<SetPasswordRules>()
            .AddScoped<ChangePassword>()
            .AddSingleton<ChangePasswordRules>()
            .AddScoped<ChooseSalon>()
            .AddScoped<CurrentAccount>()
            .AddScoped<SignInCode>()
            .AddScoped<StepUp>()
            .AddScoped<MySignIn>()
            .AddScoped<AddAuthenticatorApp>()
            .AddScoped<RemoveAuthenticatorApp>()
            .AddScoped<NewRecoveryCodes>()
            .AddScoped<Passkeys>()
            .AddScoped<SwitchPerson>()
            .AddScoped<LockTablet>()
            .AddScoped<SetPin>()
            .AddSingleton<SetPinRules>();

    public static void MapAccounts(this IEndpointRouteBuilder routes)
    {
        routes.MapChooseSalon();
        routes.MapRefreshSignIn();
        routes.MapMySignIn();
        routes.MapPasskeys();
        routes.MapLockTablet();
        routes
            .MapPost(
                "/sign-out",
                async (SignInManager<AppUser> accounts, TabletStore tablets) =>
                {
                    await accounts.SignOutAsync();
                    return Results.LocalRedirect(tablets.IsCarried ? TabletStore.SwitchPage : "/sign-in");
                }
            )
            .RequireFormToken()
            .AllowAnonymous();
    }
}
