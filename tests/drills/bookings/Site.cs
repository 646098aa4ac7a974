using System.Diagnostics;

namespace HairClinic.BookingDrill;

/// <summary>The site as a process of the drill's own; started again after it was killed.</summary>
internal sealed class Site : IDisposable
{
    private const int MostRestarts = 5;
    private readonly Clinic _clinic;
    private readonly Report _report;
    private readonly System.Collections.Concurrent.ConcurrentQueue<string> _lastWords = [];
    private int _restarts;
    private Process? _process;

    public Site(Clinic clinic, Report report, int port)
    {
        (_clinic, _report, Address) = (clinic, report, new($"http://127.0.0.1:{port}"));
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
        foreach (var (name, value) in _clinic.Environment)
            start.Environment[name] = value;
        start.Environment["DOTNET_ENVIRONMENT"] = "Production";
        start.Environment["Logging__LogLevel__Default"] = "None";
        _process?.Dispose();
        _process = Process.Start(start)!;
        _process.OutputDataReceived += (_, _) => { };
        _process.ErrorDataReceived += (_, e) => Keep(e.Data);
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
    }

    private void Keep(string? line)
    {
        if (string.IsNullOrWhiteSpace(line))
            return;
        _lastWords.Enqueue(line.Trim());
        while (_lastWords.Count > 3)
            _lastWords.TryDequeue(out _);
    }

    /// <summary>kill -9.</summary>
    public void Kill()
    {
        _process!.Kill();
        _process.WaitForExit();
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
            if (_process!.HasExited)
            {
                // As the service does that runs it: it could not start, and is started again.
                var said = $"The site ended by itself ({_process.ExitCode}): {string.Join(' ', _lastWords).Trim()}";
                if (++_restarts > MostRestarts)
                    throw new InvalidOperationException($"{said} Is port {Address.Port} free?");
                _report.Say(said);
                Start();
            }
            await Task.Delay(100);
        }
        throw new TimeoutException("The site was not ready within five minutes.");
    }

    public void Dispose()
    {
        if (_process is { HasExited: false })
            Kill();
        _process?.Dispose();
        _process = null;
    }
}
