using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Lasting;

/// <summary>What the practice's own records say: how long bonds hold and units last, what that costs, and what has got worse.</summary>
public static class LastingArea
{
    public static IServiceCollection AddLasting(this IServiceCollection services) =>
        services
            .AddScoped<WhatLasts>()
            .AddScoped<INightlyPage>(s => s.GetRequiredService<WhatLasts>())
            .AddScoped<WorkshopWatch>()
            .AddScoped<HowWellItSaid>()
            .AddScoped<CloseWatchAlarm>()
            .AddSingleton<CloseWatchAlarmRules>();

    public static void MapLasting(this IEndpointRouteBuilder routes) => routes.MapWhatLasts();
}
