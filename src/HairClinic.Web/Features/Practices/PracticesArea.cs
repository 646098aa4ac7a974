namespace HairClinic.Web.Features.Practices;

public static class PracticesArea
{
    public static IServiceCollection AddPractices(this IServiceCollection services) => services;
}
