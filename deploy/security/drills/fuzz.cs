// Sends nonsense to every address of a running site for some minutes and writes down each answer of 500 or more with its request.
//   dotnet run fuzz.cs -- --site http://127.0.0.1:5099 --minutes 10 [--seed 1] [--name X --password Y] [--out found.txt]
// Only to loopback. Repeatable by its seed as far as the site's own state is the same. Ends with 1 when something broke.
#:property PublishAot=false
using System.Net;
using System.Text;
using System.Text.RegularExpressions;

var options = args.Chunk(2).Where(c => c.Length == 2).ToDictionary(c => c[0].TrimStart('-'), c => c[1]);
var site = new Uri(options["site"]);
if (!site.IsLoopback)
    throw new InvalidOperationException("Only a site on this machine is fuzzed.");
var until = DateTime.UtcNow.AddMinutes(double.Parse(options.GetValueOrDefault("minutes", "3")));
var seed = int.Parse(options.GetValueOrDefault("seed", "1"));
var random = new Random(seed);
var found = options.GetValueOrDefault("out", "fuzz-found.txt");
File.WriteAllText(found, "");
var guids = new HashSet<string> { Guid.Empty.ToString() };
var statuses = new SortedDictionary<int, int>();
var broken = 0;
var sent = 0;

using var stranger = Browser();
using var person = Browser();
if (options.TryGetValue("name", out var name))
{
    await PostAsync(
        person,
        "/sign-in",
        await FieldsAsync(
            person,
            "/sign-in",
            field =>
                field == "Input.Name" ? name
                : field == "Input.Password" ? options["password"]
                : null
        )
    );
    var room = await person.GetAsync("/change-password");
    Console.WriteLine(room.StatusCode == HttpStatusCode.OK ? $"Signed in as {name}." : "Not signed in: only what is open to all is tried.");
}
var routes = Routes().ToList();
foreach (var route in routes.Where(r => !r.Contains('{')))
    await HarvestAsync(route);
Console.WriteLine($"{routes.Count} addresses, {guids.Count} ids, seed {seed}, until {until:HH:mm:ss} UTC.");

while (DateTime.UtcNow < until)
{
    var browser = random.Next(4) == 0 ? stranger : person;
    var route = Pick(routes);
    switch (random.Next(10))
    {
        case < 5:
            await TryAsync(browser, HttpMethod.Get, Fill(route) + Query(), null);
            break;
        case < 8 when await FieldsAsync(browser, Fill(route), _ => random.Next(3) == 0 ? null : Nonsense()) is { Count: > 0 } fields:
            for (var i = random.Next(3); i > 0; i--)
                fields.Add(KeyValuePair.Create(FieldName(fields), Nonsense()));
            await TryAsync(browser, HttpMethod.Post, Fill(route) + Query(), fields);
            break;
        case 8:
            await TryAsync(
                browser,
                Pick<HttpMethod>([
                    HttpMethod.Post,
                    HttpMethod.Put,
                    HttpMethod.Delete,
                    HttpMethod.Head,
                    HttpMethod.Options,
                    HttpMethod.Patch,
                ]),
                Fill(route) + Query(),
                random.Next(2) == 0 ? null : [KeyValuePair.Create("x", Nonsense())]
            );
            break;
        default:
            await TryAsync(
                browser,
                HttpMethod.Get,
                Pick<string>([
                    "/_blazor/negotiate",
                    "/_blazor",
                    "/%00",
                    "/%ff%fe",
                    "/" + new string('a', 3000),
                    "/clients/" + Uri.EscapeDataString(Nonsense(900)),
                    "/_framework/" + Uri.EscapeDataString(Nonsense(100)),
                    "//",
                    "/./..//",
                    "/practice/binder/export/" + Uri.EscapeDataString(Nonsense(100)) + "?for=" + Uri.EscapeDataString(Nonsense(100)),
                ]),
                null
            );
            break;
    }
}
Console.WriteLine(
    $"{sent} requests; {string.Join(", ", statuses.Select(s => $"{s.Value} × {s.Key}"))}; {broken} broke{(broken > 0 ? $" (see {found})" : "")}."
);
return broken > 0 ? 1 : 0;

HttpClient Browser() =>
    new(new HttpClientHandler { AllowAutoRedirect = false, CookieContainer = new CookieContainer() })
    {
        BaseAddress = site,
        Timeout = TimeSpan.FromSeconds(30),
    };

T Pick<T>(IReadOnlyList<T> things) => things[random.Next(things.Count)];

// From the sources, so that no address is missed because nothing links to it.
static IEnumerable<string> Routes([System.Runtime.CompilerServices.CallerFilePath] string here = "")
{
    var web = Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", "src", "HairClinic.Web");
    var texts = new[] { "*.razor", "*.cs" }
        .SelectMany(e => Directory.EnumerateFiles(web, e, SearchOption.AllDirectories))
        .Where(f => !f.Contains("/obj/"))
        .Select(File.ReadAllText);
    return texts
        .SelectMany(t => Regex.Matches(t, """(?:@page |Map(?:Get|Post|Put|Delete)\(\s*)"(/[^"]*)""").Select(m => m.Groups[1].Value))
        .Where(r => !r.EndsWith("sign-out"))
        .Distinct()
        .Order();
}

string Fill(string route) =>
    Regex.Replace(
        route,
        @"\{\*{0,2}\w+(:\w+)?\??\}",
        _ => random.Next(8) == 0 ? Uri.EscapeDataString(Nonsense(200)) : Pick(guids.ToList())
    );

string Query()
{
    string[] names =
    [
        "q",
        "date",
        "client",
        "service",
        "salon",
        "around",
        "chair",
        "start",
        "part",
        "after",
        "contact",
        "noted",
        "token",
        "code",
        "for",
        "returnUrl",
        "returnTo",
        "culture",
        "x",
    ];
    var count = random.Next(4);
    return count == 0
        ? ""
        : "?"
            + string.Join(
                '&',
                Enumerable
                    .Range(0, count)
                    .Select(_ => $"{Pick(names)}={(random.Next(3) == 0 ? Pick(guids.ToList()) : Uri.EscapeDataString(Nonsense(300)))}")
            );
}

string Nonsense(int most = 20000)
{
    string[] pieces =
    [
        "",
        " ",
        "\0",
        "a\0b",
        "%00",
        "'",
        "\"",
        "' or '1'='1",
        "\\",
        "%",
        "_",
        "<script>x</script>",
        "{{7*7}}",
        "${7*7}",
        "../../etc/passwd",
        "\r\nX-A: b",
        "\ud83d\udc87",
        "\u202e\u0000",
        "\u0661\u0662",
        "-1",
        "0",
        "99999999999999999999",
        "1e400",
        "NaN",
        "-0",
        "2147483648",
        "9999-12-31",
        "0001-01-01",
        "-9999-01-01",
        "2026-02-30",
        "2026-11-25T25:61",
        "24:00",
        "T",
        "true",
        "null",
        "[]",
        "[0]",
        "{}",
        "00000000-0000-0000-0000-000000000000",
        "11111111",
        "\uFFFF",
        "é",
        "İ",
        "ﬁ",
        "\u0301\u0301\u0301",
        "+44 20 7946 0000",
        "x@y",
        "a@b.example",
        "//elsewhere.example",
        "/\\elsewhere.example",
        "javascript:1",
        new string('a', 300),
        new string('\u00e9', 5000),
        new string('9', 400),
        string.Concat(Enumerable.Repeat("a ", 2000)),
    ];
    var text = Pick(pieces) + (random.Next(3) == 0 ? Pick(pieces) : "");
    return text.Length > most ? text[..most] : text;
}

string FieldName(List<KeyValuePair<string, string>> fields)
{
    var known = Pick(fields).Key;
    return Pick<string>([
        known,
        known + "[0]",
        known + "[99999]",
        known + ".Length",
        "Input",
        "Input.",
        "Input[]",
        "_handler",
        Nonsense(200),
    ]);
}

async Task<List<KeyValuePair<string, string>>> FieldsAsync(HttpClient browser, string page, Func<string, string?> fill)
{
    try
    {
        var html = await (await browser.GetAsync(page)).Content.ReadAsStringAsync();
        var forms = Regex
            .Matches(html, "<form[^>]*method=\"?post\"?[^>]*>.*?</form>", RegexOptions.Singleline | RegexOptions.IgnoreCase)
            .Where(f => !f.Value.Contains("sign-out"))
            .ToList();
        if (forms.Count == 0)
            return [];
        return
        [
            .. Regex
                .Matches(Pick(forms).Value, "<(?:input|select|textarea)[^>]*?name=\"([^\"]+)\"[^>]*>")
                .Select(m =>
                    KeyValuePair.Create(
                        WebUtility.HtmlDecode(m.Groups[1].Value),
                        m.Groups[1].Value is "__RequestVerificationToken" or "_handler"
                            ? Value(m.Value)
                            : fill(m.Groups[1].Value) ?? Value(m.Value)
                    )
                ),
        ];
    }
    catch (Exception e) when (e is HttpRequestException or TaskCanceledException or UriFormatException or InvalidOperationException)
    {
        return [];
    }

    static string Value(string tag) => WebUtility.HtmlDecode(Regex.Match(tag, "value=\"([^\"]*)\"").Groups[1].Value);
}

Task<HttpResponseMessage> PostAsync(HttpClient browser, string path, List<KeyValuePair<string, string>> fields) =>
    browser.PostAsync(path, new FormUrlEncodedContent(fields));

async Task HarvestAsync(string path)
{
    try
    {
        foreach (
            Match id in Regex
                .Matches(await (await person.GetAsync(path)).Content.ReadAsStringAsync(), "[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}")
                .Take(40)
        )
            guids.Add(id.Value);
    }
    catch (Exception e) when (e is HttpRequestException or TaskCanceledException) { }
}

async Task TryAsync(HttpClient browser, HttpMethod method, string path, List<KeyValuePair<string, string>>? fields)
{
    sent++;
    try
    {
        using var request = new HttpRequestMessage(method, path);
        if (fields is not null)
            request.Content = random.Next(4) == 0 ? Multipart(fields) : new FormUrlEncodedContent(fields);
        if (random.Next(10) == 0)
            request.Headers.TryAddWithoutValidation(
                Pick<string>([
                    "Accept",
                    "Accept-Language",
                    "Range",
                    "If-None-Match",
                    "Cookie",
                    "Content-Encoding",
                    "Origin",
                    "X-Forwarded-For",
                    "Accept-Encoding",
                ]),
                Regex.Replace(Nonsense(500), @"[^\x20-\x7e]", "?")
            );
        using var answer = await browser.SendAsync(request);
        var status = (int)answer.StatusCode;
        statuses[status] = statuses.GetValueOrDefault(status) + 1;
        if (status == 429)
            await Task.Delay(200);
        if (status >= 500)
            Write(status.ToString(), method, path, fields);
    }
    catch (TaskCanceledException)
    {
        Write("no answer in 30 s", method, path, fields);
    }
    catch (Exception e) when (e is HttpRequestException or UriFormatException or InvalidOperationException or FormatException) { }
}

MultipartFormDataContent Multipart(List<KeyValuePair<string, string>> fields)
{
    var content = new MultipartFormDataContent();
    foreach (var (key, value) in fields)
        content.Add(new StringContent(value), "\"" + Regex.Replace(key, @"[^\x20-\x7e]|""", "_") + "\"");
    content.Add(new ByteArrayContent(Encoding.UTF8.GetBytes(Nonsense())), "file", "a.csv");
    return content;
}

void Write(string what, HttpMethod method, string path, List<KeyValuePair<string, string>>? fields)
{
    broken++;
    var body = fields is null
        ? ""
        : "\n  "
            + string.Join(
                "\n  ",
                fields
                    .Where(f => f.Key != "__RequestVerificationToken")
                    .Select(f =>
                        $"{f.Key} = {System.Text.Json.JsonSerializer.Serialize(f.Value.Length > 300 ? f.Value[..300] + "…" : f.Value)}"
                    )
            );
    File.AppendAllText(found, $"{what} {method} {path}{body}\n");
}
