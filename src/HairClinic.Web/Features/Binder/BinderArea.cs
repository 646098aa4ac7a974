namespace HairClinic.Web.Features.Binder;

public static class BinderArea
{
    public static IServiceCollection AddBinder(this IServiceCollection services) => services;
}
