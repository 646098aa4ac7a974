namespace HairClinic.Web.Features.Binder;

public static class BinderArea
{
    public static IServiceCollection AddBinder(this IServiceCollection services) =>
        services.AddScoped<Import>().AddScoped<ImportBinder>().AddScoped<Export>();

    public static void MapBinder(this IEndpointRouteBuilder routes) => routes.MapExport();
}
