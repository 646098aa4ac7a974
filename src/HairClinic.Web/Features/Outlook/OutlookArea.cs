using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Outlook;

public static class OutlookArea
{
    public static IServiceCollection AddOutlook(this IServiceCollection services) =>
        services.AddScoped<Ahead>().AddScoped<INightlyPage>(s => s.GetRequiredService<Ahead>()).AddScoped<Recalculate>();

    public static void MapOutlook(this IEndpointRouteBuilder routes) => routes.MapAhead();
}
