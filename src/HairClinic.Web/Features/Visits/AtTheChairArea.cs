namespace HairClinic.Web.Features.Visits;

/// <summary>What is done at the chair, apart from booking.</summary>
internal static class AtTheChairArea
{
    public static IServiceCollection AddAtTheChair(this IServiceCollection services) =>
        services
            .AddScoped<AtTheChair>()
            .AddScoped<WalkIn>()
            .AddScoped<WalkInRules>()
            .AddScoped<LogRebond>()
            .AddScoped<LogRebondRules>()
            .AddScoped<LogTakeDown>()
            .AddScoped<LogTakeDownRules>()
            .AddScoped<LogVisit>()
            .AddScoped<LogVisitRules>()
            .AddScoped<UndoVisitLog>();
}
