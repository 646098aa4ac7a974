namespace HairClinic.Web.AccessLog;

public static class AccessLogSetup
{
    /// <summary>Who looked at what, in a chain that shows if a line was changed.</summary>
    public static IServiceCollection AddAccessLog(this IServiceCollection services) =>
        services.AddSingleton<AccessLogStore>().AddSingleton<AccessLogCheck>();
}
