using System.Diagnostics;
using System.Runtime.Versioning;
using Npgsql;

namespace HairClinic.EmbeddedPostgres;

/// <summary>Everything needed to make the database and to start its server, the first time and again.</summary>
internal sealed record ServerLaunch(
    DatabaseFolder Folder,
    PostgresBinaries Binaries,
    ServerUser User,
    SocketFolder Socket,
    RolePasswords Passwords,
    bool Durable,
    ILogger Logger
)
{
    private const long LongLog = 5_000_000;
    private static readonly TimeSpan StartPatience = TimeSpan.FromMinutes(1);

    public string ConnectionString(string role, string password, string database) =>
        new NpgsqlConnectionStringBuilder
        {
            Host = Socket.Path,
            Port = SocketFolder.Port,
            Username = role,
            Password = password,
            Database = database,
            ApplicationName = "HairClinic",
            MaxPoolSize = EmbeddedServerOptions.MostConnections,
        }.ConnectionString;

    public string Administrator => ConnectionString("postgres", Passwords.Administrator, "postgres");

    /// <summary>
    /// Makes an empty database folder. Locale C: order and upper case are those of the bytes on every machine and never change
    /// with the system's libraries, which would spoil indexes, and both the machine's and the packaged PostgreSQL have it.
    /// Folding and sorting names for people is therefore the program's task, not the database's.
    /// </summary>
    [SupportedOSPlatform("linux")]
    public void MakeCluster()
    {
        if (Directory.Exists(Folder.NewCluster))
            Directory.Delete(Folder.NewCluster, recursive: true);
        DatabaseFolder.CreatePrivate(Folder.NewCluster);
        User.ChangeOwner(Folder.NewCluster);
        User.RequireAccess(Folder.NewCluster);
        var password = Path.Combine(Folder.Root, "database.first-password");
        RolePasswords.WritePrivate(password, Passwords.Administrator);
        User.ChangeOwner(password);
        try
        {
            string[] options =
            [
                "--username=postgres",
                $"--pwfile={password}",
                "--auth=scram-sha-256",
                "--locale=C",
                "--encoding=UTF8",
                "--data-checksums",
            ];
            ProcessRunner.RunOrThrow([
                .. User.Prefix,
                Binaries.Initdb,
                "-D",
                Folder.NewCluster,
                .. options,
                .. Durable ? Array.Empty<string>() : ["--no-sync"],
            ]);
        }
        finally
        {
            File.Delete(password);
        }
        Directory.Move(Folder.NewCluster, Folder.Cluster);
    }

    /// <summary>Starts the server and returns when it answers.</summary>
    public async Task<ServerProcess> StartAsync(CancellationToken cancellationToken)
    {
        await LeftoverServer.StopAsync(Folder, Logger, cancellationToken);
        User.ChangeOwner(Folder.Cluster);
        User.RequireAccess(Folder.Cluster);
        User.RequireAccess(Binaries.Postgres);
        var log = new FileInfo(Folder.LogFile);
        if (log.Exists && log.Length > LongLog)
            log.MoveTo(Folder.LogFile + ".old", overwrite: true);
        var read = File.Exists(Folder.LogFile) ? new FileInfo(Folder.LogFile).Length : 0;
        var server = ServerProcess.Start(Folder.LogFile, [.. User.Prefix, Binaries.Postgres, "-D", Folder.Cluster, .. Settings()]);
        try
        {
            await WaitUntilReadyAsync(server, read, cancellationToken);
            return server;
        }
        catch
        {
            await server.DisposeAsync();
            throw;
        }
    }

    private IEnumerable<string> Settings()
    {
        string[] usual =
        [
            $"unix_socket_directories={Socket.Path}",
            "unix_socket_permissions=0700",
            "listen_addresses=",
            $"port={SocketFolder.Port}",
            "timezone=UTC",
            "log_timezone=UTC",
            // Rows, values and statements would put clients' particulars into the log; RoleSetup keeps the errors' own words out.
            "log_error_verbosity=terse",
            "log_min_error_statement=panic",
            "log_statement=none",
            "log_min_duration_statement=-1",
            "log_parameter_max_length=0",
            "log_parameter_max_length_on_error=0",
        ];
        // Tests open many sites at once on one server, each with connections of its own.
        string[] hasty = ["fsync=off", "full_page_writes=off", "max_connections=400"];
        return usual.Concat(Durable ? [] : hasty).SelectMany(s => new[] { "-c", s });
    }

    private async Task WaitUntilReadyAsync(ServerProcess server, long logBefore, CancellationToken cancellationToken)
    {
        var silent = Stopwatch.StartNew();
        while (true)
        {
            try
            {
                await using var connection = new NpgsqlConnection(Administrator + ";Pooling=false");
                await connection.OpenAsync(cancellationToken);
                return;
            }
            catch (PostgresException e) when (e.SqlState == PostgresErrorCodes.InvalidPassword)
            {
                throw new EmbeddedServerException(
                    $"The passwords in {Folder.PasswordFile} are not those of the database beside it. Put the file back from a backup of the data folder."
                );
            }
            catch (PostgresException e) when (e.SqlState == PostgresErrorCodes.CannotConnectNow)
            {
                // Recovering after a crash: it lives and works, however long that takes.
                silent.Restart();
            }
            catch (NpgsqlException) when (!server.HasExited && silent.Elapsed < StartPatience) { }
            catch (NpgsqlException e)
            {
                throw new EmbeddedServerException(
                    $"PostgreSQL {Binaries.Major} did not start ({e.Message}). It said:\n{LogSince(logBefore)}"
                );
            }
            await Task.Delay(TimeSpan.FromMilliseconds(50), cancellationToken);
        }
    }

    private string LogSince(long position)
    {
        if (!File.Exists(Folder.LogFile))
            return "(nothing)";
        using var stream = new FileStream(Folder.LogFile, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        stream.Seek(Math.Min(position, stream.Length), SeekOrigin.Begin);
        using var reader = new StreamReader(stream);
        return string.Join('\n', reader.ReadToEnd().Trim().Split('\n').TakeLast(15));
    }
}
