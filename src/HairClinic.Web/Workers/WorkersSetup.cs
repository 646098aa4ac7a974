namespace HairClinic.Web.Workers;

public static class WorkersSetup
{
    /// <summary>What goes on behind the screens: due dates kept fresh, letters sent, recalculations, and what is no longer kept taken out.</summary>
    public static IServiceCollection AddWorkers(this IServiceCollection services) =>
        services
            .AddSingleton<DueDateRefresher>()
            .AddSingleton<SignInLinkSender>()
            .AddScoped<PracticeWorkRunner>()
            .AddScoped<LetterSender>()
            .AddScoped<PageResultRefresher>()
            .AddScoped<RecalculationRunner>()
            .AddScoped<PastReplayRunner>()
            .AddSingleton<RetentionLoop>()
            .AddHostedService(services => services.GetRequiredService<RetentionLoop>())
            .AddHostedService<RecalculationLoop>()
            .AddHostedService<PracticeWorkLoop>()
            .AddHostedService<DiskWatch>();
}
