namespace HairClinic.Web.Features.Visits;

/// <summary>What is done at the chair, apart from booking.</summary>
internal static class AtTheChairArea
{
    public static IServiceCollection AddAtTheChair(this IServiceCollection services) =>
        services
            .AddScoped<AtTheChair.AtTheChair>()
            .AddScoped<WalkIn.WalkIn>()
            .AddScoped<WalkIn.WalkInRules>()
            .AddScoped<LogRebond.LogRebond>()
            .AddScoped<LogRebond.LogRebondRules>()
            .AddScoped<LogVisit.LogVisit>()
            .AddScoped<LogVisit.LogVisitRules>()
            .AddScoped<UndoLog.UndoLog>();
}
