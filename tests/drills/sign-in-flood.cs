// Floods the sign-in of a site on this machine with passwords for names nobody has, each from a network of its own, and looks how long the
// day's pages take meanwhile.
//   dotnet run sign-in-flood.cs -- --site http://127.0.0.1:5099 --name X --password Y [--seconds 20] [--at-once 100]
// The site must believe this machine about addresses (Proxy__Addresses=127.0.0.1). Only to loopback, sixty seconds at most. Ends with one line,
// and with 1 when a page took more than eight times as long as before, or failed.
#:property PublishAot=false
using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;

const double Most = 8;
var options = args.Chunk(2).Where(c => c.Length == 2).ToDictionary(c => c[0].TrimStart('-'), c => c[1]);
var site = new Uri(options["site"]);
if (!site.IsLoopback)
    throw new InvalidOperationException("Only a site on this machine is flooded.");
var seconds = Math.Clamp(int.Parse(options.GetValueOrDefault("seconds", "20"), CultureInfo.InvariantCulture), 1, 60);
var atOnce = Math.Clamp(int.Parse(options.GetValueOrDefault("at-once", "100"), CultureInfo.InvariantCulture), 1, 200);
string[] pages = ["/due", "/ready", "/alive"];

using var person = Browser();
var signedIn = await SendAsync(person, await FormAsync(person), options["name"], options["password"], "2001:db8:ffff::1");
if (signedIn.StatusCode != HttpStatusCode.Redirect)
    return Say(1, $"FAIL: {options["name"]} could not sign in before the flood ({(int)signedIn.StatusCode}).");
var quiet = await LookAsync(until: null);

using var stranger = Browser();
var form = await FormAsync(stranger);
var answers = new SortedDictionary<int, int>();
var sent = 0;
var watch = Stopwatch.StartNew();
using var over = new CancellationTokenSource();
var looking = LookAsync(over.Token);
while (watch.Elapsed < TimeSpan.FromSeconds(seconds))
{
    var burst = await Task.WhenAll(
        Enumerable.Range(0, atOnce).Select(_ => SendAsync(stranger, form, $"nobody{sent}", "not anybody's password", Network(sent++)))
    );
    foreach (var answer in burst)
        answers[(int)answer.StatusCode] = answers.GetValueOrDefault((int)answer.StatusCode) + 1;
}
over.Cancel();
var flooded = await looking;

var ratios = pages.ToDictionary(p => p, p => Median(flooded[p]) / Median(quiet[p]));

// What takes a millisecond or two is measured against no less than five: below that it is the machine's own trembling.
var slow = pages.Where(p => Median(flooded[p]) / Math.Max(5, Median(quiet[p])) > Most).ToList();
var odd = answers.Keys.Where(s => s is not (200 or 429)).ToList();
var told = string.Join(
    ", ",
    pages.Select(p =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{p} {Median(quiet[p]):0} -> {Median(flooded[p]):0} ms (x{ratios[p]:0.0}, {flooded[p].Count} asked)"
        )
    )
);
var posts = string.Join(", ", answers.Select(a => $"{a.Value} x {a.Key}"));
return slow.Count == 0 && odd.Count == 0
    ? Say(0, $"PASS: {sent} passwords sent, {atOnce} at once ({posts}); {told}.")
    : Say(1, $"FAIL: {sent} passwords sent, {atOnce} at once ({posts}); {told}; too slow: {string.Join(' ', slow)}.");

async Task<Dictionary<string, List<double>>> LookAsync(CancellationToken? until)
{
    var took = pages.ToDictionary(p => p, _ => new List<double>());
    for (var round = 0; until is { } end ? !end.IsCancellationRequested : round < 25; round++)
    {
        foreach (var page in pages)
        {
            var one = Stopwatch.StartNew();
            using var answer = await person.GetAsync(page);
            await answer.Content.ReadAsByteArrayAsync();
            if (answer.StatusCode != HttpStatusCode.OK)
                throw new InvalidOperationException($"{page} answered {(int)answer.StatusCode}.");
            // The first ones warm up what is measured.
            if (until is not null || round >= 5)
                took[page].Add(one.Elapsed.TotalMilliseconds);
        }
        await Task.Delay(100);
    }
    return took;
}

async Task<Dictionary<string, string>> FormAsync(HttpClient browser)
{
    var html = await browser.GetStringAsync("/sign-in");
    var token = Regex.Match(html, "name=\"__RequestVerificationToken\"[^>]*value=\"([^\"]+)\"").Groups[1].Value;
    return new() { ["__RequestVerificationToken"] = token, ["_handler"] = "sign-in" };
}

static Task<HttpResponseMessage> SendAsync(HttpClient browser, Dictionary<string, string> form, string name, string password, string from)
{
    var fields = new Dictionary<string, string>(form) { ["Input.Name"] = name, ["Input.Password"] = password };
    var request = new HttpRequestMessage(HttpMethod.Post, "/sign-in") { Content = new FormUrlEncodedContent(fields) };
    request.Headers.Add("X-Forwarded-For", from);
    return browser.SendAsync(request);
}

// 2001:db8::/32 is kept for examples (RFC 3849).
static string Network(int number) => $"2001:db8:{number / 0x10000:x}:{number % 0x10000:x}::1";

static double Median(List<double> times) => times.Order().ElementAt(times.Count / 2);

static int Say(int code, string verdict)
{
    Console.WriteLine(verdict);
    return code;
}

HttpClient Browser()
{
    var browser = new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false, MaxConnectionsPerServer = 300 })
    {
        BaseAddress = site,
    };
    browser.DefaultRequestHeaders.Accept.ParseAdd("text/html");
    return browser;
}
