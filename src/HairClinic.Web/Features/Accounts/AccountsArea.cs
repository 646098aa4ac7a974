using HairClinic.Web.Accounts;
using HairClinic.Web.Accounts.Tablets;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Features.Accounts.ChooseSalon;
using HairClinic.Web.Features.Accounts.LockTablet;
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
            .AddScoped<AccountMaker>()
            .AddScoped<OwnerLink.OwnerLink>()
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
            .AddScoped<Passkeys.Passkeys>()
            .AddScoped<SwitchPerson.SwitchPerson>()
            .AddScoped<LockTablet.LockTablet>()
            .AddScoped<SetPin.SetPin>()
            .AddSingleton<SetPin.SetPinRules>();

    public static void MapAccounts(this IEndpointRouteBuilder routes)
    {
        routes.MapChooseSalon();
        routes.MapLookAgain();
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
            .AskForMark()
            .AllowAnonymous();
    }
}
