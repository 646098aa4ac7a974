namespace HairClinic.Web.Privacy;

public static class PrivacySetup
{
    /// <summary>What a client agreed to, what is kept how long, what they may take with them and what is taken out of the book.</summary>
    public static IServiceCollection AddPrivacy(this IServiceCollection services) =>
        services
            .AddSingleton<ConsentStore>()
            .AddSingleton<ClientEraser>()
            .AddSingleton<RetentionEnforcer>()
            .AddSingleton<ErasureVacuum>()
            .AddScoped<ClientTakeOut>();
}
