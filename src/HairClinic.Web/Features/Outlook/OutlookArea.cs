using HairClinic.Web.Features.Outlook.Ahead;

namespace HairClinic.Web.Features.Outlook;

public static class OutlookArea
{
    public static IServiceCollection AddOutlook(this IServiceCollection services) =>
        services.AddScoped<Ahead.Ahead>().AddScoped<Recalculate.Recalculate>();

    public static void MapOutlook(this IEndpointRouteBuilder routes) => routes.MapAhead();
}
