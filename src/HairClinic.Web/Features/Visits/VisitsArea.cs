namespace HairClinic.Web.Features.Visits;

public static class VisitsArea
{
    public static IServiceCollection AddVisits(this IServiceCollection services) =>
        services
            .AddScoped<SlotSearch>()
            .AddScoped<Day>()
            .AddScoped<VisitDetails>()
            .AddScoped<ChangeState>()
            .AddScoped<BookVisit>()
            .AddSingleton<BookVisitRules>()
            .AddScoped<MoveVisit>()
            .AddSingleton<MoveVisitRules>()
            .AddScoped<CallOff>()
            .AddSingleton<CallOffRules>()
            .AddAtTheChair();
}
