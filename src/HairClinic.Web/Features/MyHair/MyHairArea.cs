namespace HairClinic.Web.Features.MyHair;

public static class MyHairArea
{
    public static IServiceCollection AddMyHair(this IServiceCollection services) => services;
}
