using HairClinic.Web.Features.Privacy.TakeOut;

namespace HairClinic.Web.Features.Privacy;

public static class PrivacyArea
{
    public static IServiceCollection AddPrivacyArea(this IServiceCollection services) =>
        services
            .AddScoped<PrivacyAndPapers.PrivacyAndPapers>()
            .AddScoped<PrivacyAndPapers.PrivacyAndPapersRules>()
            .AddScoped<EditConsentWords.EditConsentWords>()
            .AddScoped<EditConsentWords.EditConsentWordsRules>()
            .AddScoped<TakeOut.TakeOut>()
            .AddScoped<EraseClient.EraseClient>()
            .AddScoped<EraseClient.EraseClientRules>()
            .AddScoped<Keeping.Keeping>()
            .AddScoped<Keeping.KeepingRules>()
            .AddScoped<ApplyKeeping.ApplyKeeping>();

    public static void MapPrivacy(this IEndpointRouteBuilder routes) => routes.MapTakeOut();
}
