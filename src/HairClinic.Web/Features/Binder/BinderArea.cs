using HairClinic.Web.Features.Binder.Export;
using HairClinic.Web.Features.Binder.Import;

namespace HairClinic.Web.Features.Binder;

public static class BinderArea
{
    public static IServiceCollection AddBinder(this IServiceCollection services) =>
        services.AddScoped<Import.Import>().AddScoped<ImportBinder>().AddScoped<Export.Export>();

    public static void MapBinder(this IEndpointRouteBuilder routes) => routes.MapExport();
}
