using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

namespace HairClinic.Benchmarks.OwnPage;

/// <summary>The load tool, and waiting for whatever it is to load.</summary>
internal static partial class Wrk
{
    /// <returns>Requests a second, the slowest hundredth in milliseconds, and whether every answer was a good one.</returns>
    public static async Task<(double PerSecond, double P99, bool Clean)> RunAsync(
        string address,
        int connections,
        int seconds,
        IReadOnlyList<string>? cookies = null
    )
    {
        var start = new ProcessStartInfo("wrk") { RedirectStandardOutput = true };
        foreach (var word in new[] { "-t1", $"-c{connections}", $"-d{seconds}s", "--latency" })
            start.ArgumentList.Add(word);
        var script = cookies is null ? null : Path.GetTempFileName();
        if (script is not null)
        {
            await File.WriteAllTextAsync(script, InTurn(cookies!));
            start.ArgumentList.Add("-s");
            start.ArgumentList.Add(script);
        }
        start.ArgumentList.Add(address);
        using var process = Process.Start(start)!;
        var text = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        if (script is not null)
            File.Delete(script);
        var clean = !text.Contains("Non-2xx", StringComparison.Ordinal) && !text.Contains("Socket errors", StringComparison.Ordinal);
        return (
            double.Parse(PerSecond().Match(text).Groups[1].Value, CultureInfo.InvariantCulture),
            Milliseconds(P99().Match(text)),
            clean
        );
    }

    // Each request is another client's: one who asked this often alone would be held back.
    private static string InTurn(IReadOnlyList<string> cookies) =>
        $$"""
            local requests, turn = {}, 0
            function init()
                for _, cookie in ipairs({ {{string.Join(", ", cookies.Select(c => $"'{c}'"))}} }) do
                    requests[#requests + 1] = wrk.format("GET", nil, { Cookie = cookie })
                end
            end
            function request()
                turn = turn % #requests + 1
                return requests[turn]
            end
            """;

    public static async Task WaitAsync(string address)
    {
        using var http = new HttpClient();
        for (var tries = 0; tries < 240; tries++)
        {
            try
            {
                if ((await http.GetAsync(new Uri(address))).IsSuccessStatusCode)
                    return;
            }
            catch (HttpRequestException)
            {
                // Not up yet.
            }
            await Task.Delay(250);
        }
        throw new InvalidOperationException($"Nothing answered at {address} within a minute.");
    }

    [GeneratedRegex(@"Requests/sec:\s+([\d.]+)")]
    private static partial Regex PerSecond();

    private static double Milliseconds(Match told) =>
        double.Parse(told.Groups[1].Value, CultureInfo.InvariantCulture)
        * told.Groups[2].Value switch
        {
            "us" => 0.001,
            "ms" => 1,
            "s" => 1000,
            var unit => throw new FormatException($"wrk tells times in {unit}."),
        };

    [GeneratedRegex(@"99%\s+([\d.]+)(\w+)")]
    private static partial Regex P99();
}
