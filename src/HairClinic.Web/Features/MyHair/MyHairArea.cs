using HairClinic.Web.Accounts;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Shell;
using HairClinic.Web.Shell.Limits;

namespace HairClinic.Web.Features.MyHair;

public static class MyHairArea
{
    public static IServiceCollection AddMyHair(this IServiceCollection services) =>
        services
            .AddSingleton<SignInLinkStore>()
            .AddSingleton<LinkAskQueue>()
            .AddScoped<SelfBookingSlots>()
            .AddScoped<OwnSalonReader>()
            .AddScoped<AskLink>()
            .AddSingleton<AskLinkRules>()
            .AddScoped<OpenLink>()
            .AddScoped<MyNewAddress>()
            .AddScoped<AddressNotConfirmed>()
            .AddSingleton<OwnPageReader>()
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

    public static void MapMyHair(this WebApplication app)
    {
        app.UseMiddleware<OwnPageRenderer>();
        // Asks the sign-in as every other client's address does, and so ends it or turns it to where it leads now.
        Map("/my-hair/refresh-sign-in", () => Results.LocalRedirect("/my-hair?again=true"));
        Map("/my-hair/dates.ics", async (DatesFile dates, CancellationToken cancellation) => Calendar(await dates.OpenAsync(cancellation)));
        Map(
                "/my-hair/my-photos/{photoId:guid}",
                (Guid photoId, MyPhotos photos, HttpContext http) => PictureAsync(photos, photoId, null, http)
            )
            .WithMetadata(new ConfirmedAddressOnlyAttribute());
        Map(
                "/my-hair/my-photos/{photoId:guid}/small",
                (Guid photoId, MyPhotos photos, HttpContext http) => PictureAsync(photos, photoId, PhotoStore.Small, http)
            )
            .WithMetadata(new ConfirmedAddressOnlyAttribute());
        // The archive's name tells nothing.
        Map(
                TakeMyData.FileAddress,
                (TakeMyData slice, HttpContext http) =>
                    FileResults.WriteArchiveAsync(
                        http,
                        begin => slice.WriteAsync(() => begin("attachment; filename=\"my-data.zip\""), http.RequestAborted)
                    )
            )
            .WithMetadata(new ConfirmedAddressOnlyAttribute(), new StepUpAttribute(), new RateLimitedAttribute(LimitedAction.Export));
        app.MapGet(
                "/my-hair/calendar/{address}",
                async (string address, DatesFile dates, CancellationToken cancellation) =>
                    Calendar(await dates.OpenFeedAsync(address, cancellation))
            )
            .AllowAnonymous()
            .WithMetadata(new RateLimitedAttribute(LimitedAction.UseLink));

        RouteHandlerBuilder Map(string address, Delegate answer) => app.MapGet(address, answer).RequireAuthorization(Policies.Client);
    }

    private static IResult Calendar(string? text) =>
        text is null ? Results.NotFound() : Results.File(Encoding.UTF8.GetBytes(text), "text/calendar; charset=utf-8", "dates.ics");

    // What is not theirs, or not shared, is not there.
    private static async Task<IResult> PictureAsync(MyPhotos photos, Guid photoId, string? part, HttpContext http) =>
        FileResults.Picture(http, await photos.ReadPictureAsync(photoId, part, http.RequestAborted));
}
