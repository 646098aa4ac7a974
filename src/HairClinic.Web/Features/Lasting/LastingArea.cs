using HairClinic.Web.Learning;

namespace HairClinic.Web.Features.Lasting;

/// <summary>What the practice's own records say: how long bonds hold and units last, and what that costs.</summary>
public static class LastingArea
{
    public static IServiceCollection AddLasting(this IServiceCollection services) =>
        services.AddScoped<WhatLasts>().AddScoped<INightlyPage>(s => s.GetRequiredService<WhatLasts>());

    public static void MapLasting(this IEndpointRouteBuilder routes) => routes.MapWhatLasts();
}
