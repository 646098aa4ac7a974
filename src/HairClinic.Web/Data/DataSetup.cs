using HairClinic.EmbeddedPostgres;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Photos;
using HairClinic.Web.Data.Sealing;
using HairClinic.Web.Data.Writes;

namespace HairClinic.Web.Data;

public static class DataSetup
{
    /// <summary>The database, found or started, and what every slice writes through.</summary>
    public static IServiceCollection AddClinicData(this IServiceCollection services) =>
        services
            .AddSingleton<IClock>(SystemClock.Instance)
            .AddSingleton<DatabaseLifetime>()
            .AddSingleton(sp => new DataDisk(() => DiskSpace.For(sp.GetRequiredService<IConfiguration>()["data"] ?? DefaultFolders.Data)))
            .AddSingleton(sp =>
                ClinicDbOptions.For(
                    DatabaseConnectionStrings.WithAutoPrepare(sp.GetRequiredService<DatabaseLifetime>().Connections.Program),
                    sp.GetRequiredService<ILoggerFactory>(),
                    sp.GetRequiredService<IClock>()
                )
            )
            .AddKeys()
            .AddScoped<ClinicDbFactory>()
            .AddScoped<SalonNames>()
            .AddSingleton<PracticeJobRunner>()
            .AddScoped<WriteOnce>()
            .AddScoped<DraftStore>()
            .AddScoped<SealedDraftStore>()
            .AddSingleton<SealedFiles>()
            .AddScoped<PhotoStore>();
}
