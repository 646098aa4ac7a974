using HairClinic.Web.Data.Accounts;
using HairClinic.Web.Data.Books;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Authentication;

namespace HairClinic.Web.Features.MyHair;

public static class MyHairArea
{
    public static IServiceCollection AddMyHair(this IServiceCollection services) =>
        services
            .AddSingleton<SignInLinkBook>()
            .AddScoped<AskLink.AskLink>()
            .AddSingleton<AskLink.AskLinkRules>()
            .AddScoped<OpenLink.OpenLink>()
            .AddScoped<MyHair.MyHair>()
            .AddScoped<MyUnits.MyUnits>()
            .AddScoped<InviteClient.InviteClient>()
            .AddSingleton<InviteClient.InviteClientRules>()
            .AddScoped<DemoLetters.DemoLetters>();

    public static void MapMyHair(this IEndpointRouteBuilder routes) =>
        routes
            .MapPost(
                "/my-hair/sign-out",
                async (HttpContext http) =>
                {
                    await http.SignOutAsync(AccountsSetup.ClientScheme);
                    return Results.LocalRedirect("/my-hair/ask-link");
                }
            )
            .WithMetadata(new RequireAntiforgeryTokenAttribute())
            .AllowAnonymous();
}
