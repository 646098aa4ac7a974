using System.Diagnostics;

namespace HairClinic.EmbeddedPostgres;

/// <summary>
/// The program's own PostgreSQL: a child process on a data folder, reached by a private socket, watched and started again when
/// it ends by itself, stopped cleanly on dispose and also when this program is killed.
/// </summary>
public sealed class EmbeddedServer : IAsyncDisposable
{
    private static readonly TimeSpan SteadyRun = TimeSpan.FromMinutes(1);

    private readonly EmbeddedServerOptions _options;
    private readonly FolderLock _folderLock;
    private readonly ServerLaunch _launch;
    private readonly CancellationTokenSource _stopping = new();
    private readonly Task _watch;
    private ServerProcess _process;
    private int _disposed;

    private EmbeddedServer(EmbeddedServerOptions options, FolderLock folderLock, ServerLaunch launch, ServerProcess process)
    {
        (_options, _folderLock, _launch, _process) = (options, folderLock, launch, process);
        AsProgram = launch.ConnectionString(RoleSetup.Program, launch.Passwords.Program, RoleSetup.Database);
        AsMigrator = launch.ConnectionString(RoleSetup.Migrator, launch.Passwords.Migrator, RoleSetup.Database);
        AsKeeper = launch.ConnectionString(RoleSetup.Keeper, launch.Passwords.Keeper, RoleSetup.Database);
        _watch = Task.Run(WatchAsync);
    }

    /// <summary>The connection string of the role that owns nothing.</summary>
    public string AsProgram { get; }

    /// <summary>Of the role that owns the schema.</summary>
    public string AsMigrator { get; }

    /// <summary>Of the role that reads everything and writes nothing.</summary>
    public string AsKeeper { get; }

    /// <summary>The superuser, in the database <c>postgres</c>: for tests that make and drop databases. The program itself never uses it.</summary>
    public string Administrator => _launch.Administrator;

    /// <summary>The server programs in use.</summary>
    public PostgresBinaries Binaries => _launch.Binaries;

    /// <summary>Returns when the server answers and the roles of the fence exist.</summary>
    /// <exception cref="EmbeddedServerException">The server cannot run here; the message says what to do.</exception>
    public static async Task<EmbeddedServer> StartAsync(
        EmbeddedServerOptions options,
        ILogger logger,
        CancellationToken cancellationToken = default
    )
    {
        if (!OperatingSystem.IsLinux())
            throw new EmbeddedServerException(
                "HairClinic runs its own PostgreSQL on Linux only. Elsewhere, name a PostgreSQL server with ConnectionStrings__Program and ConnectionStrings__Migrator."
            );
        var folder = DatabaseFolder.Open(options.DataFolder);
        var folderLock = FolderLock.Acquire(folder);
        SocketFolder? socket = null;
        ServerProcess? process = null;
        try
        {
            var binaries = options.Search.Find(folder.MajorVersion());
            var user = ServerUser.Choose();
            socket = SocketFolder.Make(folder, user);
            var launch = new ServerLaunch(folder, binaries, user, socket, RolePasswords.ReadOrCreate(folder), options.Durable, logger);
            if (!folder.HasCluster)
                launch.MakeCluster();
            process = await launch.StartAsync(cancellationToken);
            await RoleSetup.EnsureAsync(launch.Administrator + ";Pooling=false", launch.Passwords, cancellationToken);
            logger.LogInformation("PostgreSQL {Major} from {Binaries} runs on {Folder}", binaries.Major, binaries.Folder, folder.Root);
            return new(options, folderLock, launch, process);
        }
        catch
        {
            if (process is not null)
                await process.DisposeAsync();
            socket?.Dispose();
            folderLock.Dispose();
            throw;
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (Interlocked.Exchange(ref _disposed, 1) == 1)
            return;
        await _stopping.CancelAsync();
        await _watch;
        await _process.DisposeAsync();
        _launch.Socket.Dispose();
        _folderLock.Dispose();
        _stopping.Dispose();
    }

    private async Task WatchAsync()
    {
        var logger = _launch.Logger;
        var pause = _options.FirstPause;
        try
        {
            while (true)
            {
                var run = Stopwatch.StartNew();
                var code = await _process.WaitForExitAsync(_stopping.Token);
                if (run.Elapsed > SteadyRun)
                    pause = _options.FirstPause;
                // Reason and count are for diagnosis; that the database is away is logged once, where it is noticed.
                logger.LogInformation(
                    "PostgreSQL ended by itself (exit code {Code}); starting it again in {Pause}. See {Log}",
                    code,
                    pause,
                    _launch.Folder.LogFile
                );
                do
                {
                    await Task.Delay(pause, _stopping.Token);
                    pause = TimeSpan.FromTicks(Math.Min(pause.Ticks * 2, _options.LongestPause.Ticks));
                } while (!await TryRestartAsync(pause));
                logger.LogInformation("PostgreSQL runs again");
            }
        }
        catch (OperationCanceledException) when (_stopping.IsCancellationRequested) { }
    }

    private async Task<bool> TryRestartAsync(TimeSpan pause)
    {
        try
        {
            var next = await _launch.StartAsync(_stopping.Token);
            await _process.DisposeAsync();
            _process = next;
            return true;
        }
        // Whatever stands in the way – a full disk, a missing file – may be put right while the program waits.
        catch (Exception e) when (!_stopping.IsCancellationRequested)
        {
            _launch.Logger.LogInformation("PostgreSQL could not be started again; next try in {Pause}. {Reason}", pause, e.Message);
            return false;
        }
    }
}

/// <summary>The program's own PostgreSQL cannot run. The message is for the person who starts the program and says what to do.</summary>
public sealed class EmbeddedServerException(string message) : Exception(message);

public sealed record EmbeddedServerOptions(string DataFolder)
{
    /// <summary>Per program: leaves room for the other roles under a server's usual 100.</summary>
    public const int MostConnections = 60;

    public PostgresSearch Search { get; init; } = PostgresSearch.FromEnvironment();

    /// <summary>False is faster and survives a killed server but not a power cut. For tests only.</summary>
    public bool Durable { get; init; } = true;

    /// <summary>The pause before a server that ended by itself is started again; it doubles with each failure, up to <see cref="LongestPause"/>.</summary>
    public TimeSpan FirstPause { get; init; } = TimeSpan.FromSeconds(0.5);

    public TimeSpan LongestPause { get; init; } = TimeSpan.FromSeconds(2);
}
