using System.Text;
using HairClinic.Web.Accounts;
using HairClinic.Web.Features.MyHair.MyPhotos;
using HairClinic.Web.Features.MyHair.TakeMyData;
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
            .AddScoped<AskLink.AskLink>()
            .AddSingleton<AskLink.AskLinkRules>()
            .AddScoped<OpenLink.OpenLink>()
            .AddScoped<MyNewAddress.MyNewAddress>()
            .AddScoped<ConfirmFirst.ConfirmFirst>()
            .AddScoped<MyHair.MyHair>()
            .AddScoped<MyUnits.MyUnits>()
            .AddScoped<ChooseATime.ChooseATime>()
            .AddSingleton<ChooseATime.ChooseATimeRules>()
            .AddScoped<MoveMyTime.MoveMyTime>()
            .AddSingleton<MoveMyTime.MoveMyTimeRules>()
            .AddScoped<CallOffMyTime.CallOffMyTime>()
            .AddScoped<MyBondHasLifted.MyBondHasLifted>()
            .AddSingleton<MyBondHasLifted.MyBondHasLiftedRules>()
            .AddScoped<Aftercare.Aftercare>()
            .AddScoped<MyPhotos.MyPhotos>()
            .AddScoped<WhoSawMine.WhoSawMine>()
            .AddScoped<MyConsents.MyConsents>()
            .AddScoped<TakeMyData.TakeMyData>()
            .AddScoped<Preferences.Preferences>()
            .AddScoped<WhoseDates.WhoseDates>()
            .AddScoped<DatesFile.DatesFile>()
            .AddScoped<InviteClient.InviteClient>()
            .AddSingleton<InviteClient.InviteClientRules>()
            .AddScoped<DemoLetters.DemoLetters>();

    public static void MapMyHair(this IEndpointRouteBuilder routes)
    {
        // Asks the sign-in as every other client's address does, and so ends it or turns it to where it leads now.
        routes.MapGet("/my-hair/look-again", () => Results.LocalRedirect("/my-hair?again=true")).RequireAuthorization(Policies.Client);
        routes
            .MapGet(
                "/my-hair/dates.ics",
                async (DatesFile.DatesFile dates, CancellationToken cancellation) => File(await dates.OpenAsync(cancellation))
            )
            .RequireAuthorization(Policies.Client);
        routes
            .MapGet(
                "/my-hair/calendar/{address}",
                async (string address, DatesFile.DatesFile dates, CancellationToken cancellation) =>
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
