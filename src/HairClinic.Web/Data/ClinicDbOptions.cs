using HairClinic.Web.Data.Writes;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace HairClinic.Web.Data;

/// <summary>How a context reaches PostgreSQL: one place for the program, the migrator, the tests and design time.</summary>
public static class ClinicDbOptions
{
    // The passkey table comes with version 3 of Identity's schema, which EF reads from these services.
    private static readonly ServiceProvider IdentitySchema = new ServiceCollection()
        .Configure<IdentityOptions>(o => o.Stores.SchemaVersion = IdentitySchemaVersions.Version3)
        .BuildServiceProvider();

    public static DbContextOptions<ClinicDb> For(string connection, ILoggerFactory? logs = null, IClock? clock = null) =>
        new DbContextOptionsBuilder<ClinicDb>()
            // One query sees one moment of the book; where rows would multiply, a reader asks for split queries itself.
            .UseNpgsql(
                connection,
                n => n.UseNodaTime().SetPostgresVersion(15, 0).UseQuerySplittingBehavior(QuerySplittingBehavior.SingleQuery)
            )
            .UseSnakeCaseNamingConvention()
            // EF's own line says only that something broke: whoever catches the exception logs it, and an ended sign-in is not an error.
            .ConfigureWarnings(w =>
                w.Log(
                    (RelationalEventId.ConnectionError, LogLevel.Debug),
                    (RelationalEventId.CommandError, LogLevel.Debug),
                    (RelationalEventId.TransactionError, LogLevel.Debug)
                )
            )
            .UseApplicationServiceProvider(IdentitySchema)
            .AddInterceptors(
                new ActorConnectionInterceptor(clock ?? SystemClock.Instance),
                new ReplanOrdersInterceptor(clock ?? SystemClock.Instance)
            )
            .UseLoggerFactory(logs)
            .Options;
}
