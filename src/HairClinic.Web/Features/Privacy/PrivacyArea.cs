namespace HairClinic.Web.Features.Privacy;

public static class PrivacyArea
{
    public static IServiceCollection AddPrivacyArea(this IServiceCollection services) =>
        services
            .AddScoped<PrivacyAndPapers>()
            .AddScoped<PrivacyAndPapersRules>()
            .AddScoped<EditConsentWords>()
            .AddScoped<EditConsentWordsRules>()
            .AddScoped<TakeOut>()
            .AddScoped<EraseClient>()
            .AddScoped<EraseClientRules>()
            .AddScoped<EditRetention>()
            .AddScoped<EditRetentionRules>()
            .AddScoped<ApplyRetention>();

    public static void MapPrivacy(this IEndpointRouteBuilder routes) => routes.MapTakeOut();
}
