using System.Text;
using HairClinic.Web.Accounts;
using HairClinic.Web.Shell;
using HairClinic.Web.Shell.Limits;

namespace HairClinic.Web.Features.MyHair;

public static class MyHairArea
{
    public static IServiceCollection AddMyHair(this IServiceCollection services) =>
        services
            .AddSingleton<SignInLinkStore>()
            .AddSingleton<LinkAskQueue>()
            .AddScoped<OwnSlots>()
            .AddScoped<OwnSalon>()
            .AddScoped<AskLink>()
            .AddSingleton<AskLinkRules>()
            .AddScoped<OpenLink>()
            .AddScoped<MyNewAddress>()
            .AddScoped<ConfirmFirst>()
            .AddScoped<MyHair>()
            .AddScoped<MyUnits>()
            .AddScoped<ChooseATime>()
            .AddSingleton<ChooseATimeRules>()
            .AddScoped<MoveMyTime>()
            .AddSingleton<MoveMyTimeRules>()
            .AddScoped<CallOffMyTime>()
            .AddScoped<MyBondHasLifted>()
            .AddSingleton<MyBondHasLiftedRules>()
            .AddScoped<Aftercare>()
            .AddScoped<MyPhotos>()
            .AddScoped<WhoSawMine>()
            .AddScoped<MyConsents>()
            .AddScoped<TakeMyData>()
            .AddScoped<Preferences>()
            .AddScoped<WhoseDates>()
            .AddScoped<DatesFile>()
            .AddScoped<InviteClient>()
            .AddSingleton<InviteClientRules>()
            .AddScoped<DemoLetters>();

    public static void MapMyHair(this IEndpointRouteBuilder routes)
    {
        // Asks the sign-in as every other client's address does, and so ends it or turns it to where it leads now.
        routes.MapGet("/my-hair/look-again", () => Results.LocalRedirect("/my-hair?again=true")).RequireAuthorization(Policies.Client);
        routes
            .MapGet(
                "/my-hair/dates.ics",
                async (DatesFile dates, CancellationToken cancellation) => File(await dates.OpenAsync(cancellation))
            )
            .RequireAuthorization(Policies.Client);
        routes
            .MapGet(
                "/my-hair/calendar/{address}",
                async (string address, DatesFile dates, CancellationToken cancellation) =>
                    File(await dates.FollowAsync(address, cancellation))
            )
            .AllowAnonymous()
            .WithMetadata(new LimitedAttribute(Limited.UseLink));
        routes.MapMyPhotos();
        routes.MapTakeMyData();
    }

    private static IResult File(string? text) =>
        text is null ? Results.NotFound() : Results.File(Encoding.UTF8.GetBytes(text), "text/calendar; charset=utf-8", "dates.ics");
}
