using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Writes;
using NodaTime;

namespace HairClinic.Web.Data;

public static class DataSetup
{
    /// <summary>The database, found or started, and what every slice writes through.</summary>
    public static IServiceCollection AddClinicData(this IServiceCollection services) =>
        services
            .AddSingleton<IClock>(SystemClock.Instance)
            .AddSingleton<ClinicDatabase>()
            .AddSingleton(sp =>
                ClinicDbOptions.For(sp.GetRequiredService<ClinicDatabase>().Connections.Program, sp.GetRequiredService<ILoggerFactory>())
            )
            .AddSingleton<OwnPageBook>()
            .AddScoped<WriteOnce>()
            .AddScoped<DraftBook>();
}
