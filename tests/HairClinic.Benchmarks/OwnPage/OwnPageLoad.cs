using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;

namespace HairClinic.Benchmarks.OwnPage;

/// <summary>Five thousand signed-in clients, each looking at their page once a minute for five minutes, spread over the minute.</summary>
internal static class OwnPageLoad
{
    private const int Clients = 5000;
    private const int Port = 5873;
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);

    // For trying it out; the drill as such is five minutes.
    private static readonly int Minutes = int.TryParse(Environment.GetEnvironmentVariable("OWN_PAGE_MINUTES"), out var minutes)
        ? minutes
        : 5;

    public static async Task RunAsync(Report report)
    {
        var folder = Path.Combine(Path.GetTempPath(), $"hairclinic-own-{Guid.NewGuid():N}"[..24]);
        Directory.CreateDirectory(folder);
        File.SetUnixFileMode(folder, (UnixFileMode)0b111_101_101);
        try
        {
            await using var own = await OwnSite.OpenAsync(Path.Combine(folder, "own"), Port, Clients);
            using var http = new HttpClient(
                new SocketsHttpHandler
                {
                    UseCookies = false,
                    AllowAutoRedirect = false,
                    MaxConnectionsPerServer = 512,
                }
            );
            var times = new ConcurrentBag<double>();
            var errors = new ConcurrentDictionary<string, int>();
            var running = new List<Task>(Clients * Minutes);
            var watch = Stopwatch.StartNew();
            for (var i = 0; i < Clients * Minutes; i++)
            {
                var at = Minute * (double)i / Clients;
                if (at - watch.Elapsed is { Ticks: > 0 } early)
                    await Task.Delay(early);
                running.Add(LookAsync(http, own.Address, own.Cookies[i % Clients], i % Clients, times, errors));
            }
            await Task.WhenAll(running);
            var sorted = times.Order().ToList();
            report.Say(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"own-page-load: {Clients} clients once a minute for {Minutes} minutes: {sorted.Count} pages, p50 {sorted[sorted.Count / 2]:F1} ms, p99 {sorted[sorted.Count * 99 / 100]:F1} ms, slowest {sorted[^1]:F0} ms, errors {errors.Values.Sum()}"
                )
            );
            foreach (var (what, count) in errors)
                report.Say($"  {count} × {what}");
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task LookAsync(
        HttpClient http,
        string address,
        string cookie,
        int client,
        ConcurrentBag<double> times,
        ConcurrentDictionary<string, int> errors
    )
    {
        var start = Stopwatch.GetTimestamp();
        try
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, address + "/my-hair");
            request.Headers.Add("Cookie", cookie);
            using var answer = await http.SendAsync(request);
            var text = await answer.Content.ReadAsStringAsync();
            // Their own page and nobody else's.
            if (!answer.IsSuccessStatusCode || !text.Contains($"Client number {client}<", StringComparison.Ordinal))
                Count($"{(int)answer.StatusCode}");
        }
        catch (Exception e) when (e is HttpRequestException or TaskCanceledException)
        {
            Count(e.GetType().Name);
        }
        times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);

        void Count(string what) => errors.AddOrUpdate(what, 1, (_, n) => n + 1);
    }
}
