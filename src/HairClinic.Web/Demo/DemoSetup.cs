namespace HairClinic.Web.Demo;

public static class DemoSetup
{
    public static IServiceCollection AddDemo(this IServiceCollection services) =>
        services.AddSingleton<DemoSeeder>().AddScoped<DemoAccounts>().AddScoped<DemoConfidentialData>();
}
