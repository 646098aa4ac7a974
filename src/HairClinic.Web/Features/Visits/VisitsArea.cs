using HairClinic.Web.Features.Visits.Slots;

namespace HairClinic.Web.Features.Visits;

public static class VisitsArea
{
    public static IServiceCollection AddVisits(this IServiceCollection services) =>
        services
            .AddScoped<SlotSearch>()
            .AddScoped<Day.Day>()
            .AddScoped<VisitDetails.VisitDetails>()
            .AddScoped<ChangeState.ChangeState>()
            .AddScoped<BookVisit.BookVisit>()
            .AddSingleton<BookVisit.BookVisitRules>()
            .AddScoped<MoveVisit.MoveVisit>()
            .AddSingleton<MoveVisit.MoveVisitRules>()
            .AddScoped<CallOff.CallOff>()
            .AddSingleton<CallOff.CallOffRules>()
            .AddAtTheChair();
}
