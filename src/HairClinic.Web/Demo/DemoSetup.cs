namespace HairClinic.Web.Demo;

public static class DemoSetup
{
    public static IServiceCollection AddDemo(this IServiceCollection services) =>
        services.AddSingleton<DemoFiller>().AddScoped<DemoAccounts>().AddScoped<DemoConfided>();
}
