using HairClinic.Web.Data.AccessLog;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.EmbeddedPostgres;
using HairClinic.Web.Data.Keys;
using HairClinic.Web.Data.Photos;
using HairClinic.Web.Data.Privacy;
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
            .AddSingleton(sp => new DataDisk(() => DiskSpace.Of(sp.GetRequiredService<IConfiguration>()["data"] ?? DefaultFolders.Data)))
            .AddSingleton(sp =>
                ClinicDbOptions.For(
                    ClinicConnections.Preparing(sp.GetRequiredService<ClinicDatabase>().Connections.Program),
                    sp.GetRequiredService<ILoggerFactory>(),
                    sp.GetRequiredService<IClock>()
                )
            )
            .AddKeys()
            .AddSingleton<AccessLogBook>()
            .AddSingleton<AccessLogCheck>()
            .AddSingleton<OwnPageBook>()
            .AddScoped<WriteOnce>()
            .AddScoped<DraftBook>()
            .AddScoped<SealedDraftBook>()
            .AddSingleton<SealedFiles>()
            .AddScoped<PhotoBook>()
            .AddSingleton<ConsentBook>()
            .AddSingleton<ClientEraser>()
            .AddSingleton<RetentionBook>()
            .AddSingleton<ErasedRows>()
            .AddScoped<ClientTakeOut>();
}
