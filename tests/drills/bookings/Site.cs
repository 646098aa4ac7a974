using System.Diagnostics;

namespace HairClinic.BookingDrill;

/// <summary>The site as a process of the drill's own; started again after it was killed.</summary>
internal sealed class Site : IDisposable
{
    private const int MostRestarts = 5;
    private readonly Clinic clinic;
    private readonly Report report;
    private readonly System.Collections.Concurrent.ConcurrentQueue<string> lastWords = [];
    private int restarts;
    private Process? process;

    public Site(Clinic clinic, Report report, int port)
    {
        (this.clinic, this.report, Address) = (clinic, report, new($"http://127.0.0.1:{port}"));
        // A drill that is stopped takes its site along.
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Dispose();
    }

    public Uri Address { get; }

    public void Start()
    {
        var start = new ProcessStartInfo(
            "dotnet",
            [Path.Combine(AppContext.BaseDirectory, "HairClinic.Web.dll"), "serve", "--urls", Address.ToString()]
        )
        {
            WorkingDirectory = AppContext.BaseDirectory,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var (name, value) in clinic.Environment)
            start.Environment[name] = value;
        start.Environment["DOTNET_ENVIRONMENT"] = "Production";
        start.Environment["Logging__LogLevel__Default"] = "None";
        process?.Dispose();
        process = Process.Start(start)!;
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, e) => Keep(e.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    private void Keep(string? line)
    {
        if (string.IsNullOrWhiteSpace(line))
            return;
        lastWords.Enqueue(line.Trim());
        while (lastWords.Count > 3)
            lastWords.TryDequeue(out _);
    }

    /// <summary>kill -9.</summary>
    public void Kill()
    {
        process!.Kill();
        process.WaitForExit();
    }

    /// <returns>Seconds until it answered that it is ready.</returns>
    /// <exception cref="TimeoutException">It did not within five minutes.</exception>
    public async Task<double> ReadyAsync()
    {
        using var http = new HttpClient { Timeout = TimeSpan.FromSeconds(5) };
        var watch = Stopwatch.StartNew();
        while (watch.Elapsed < TimeSpan.FromMinutes(5))
        {
            try
            {
                using var answer = await http.GetAsync(new Uri(Address, "/ready"));
                if (answer.IsSuccessStatusCode)
                    return watch.Elapsed.TotalSeconds;
            }
            catch (Exception e) when (e is HttpRequestException or TaskCanceledException)
            {
                // Not up yet.
            }
            if (process!.HasExited)
            {
                // As the service does that runs it: it could not start, and is started again.
                var said = $"The site ended by itself ({process.ExitCode}): {string.Join(' ', lastWords).Trim()}";
                if (++restarts > MostRestarts)
                    throw new InvalidOperationException($"{said} Is port {Address.Port} free?");
                report.Say(said);
                Start();
            }
            await Task.Delay(100);
        }
        throw new TimeoutException("The site was not ready within five minutes.");
    }

    public void Dispose()
    {
        if (process is { HasExited: false })
            Kill();
        process?.Dispose();
        process = null;
    }
}
