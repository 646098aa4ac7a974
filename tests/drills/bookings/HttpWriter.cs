using System.Net;
using System.Text.RegularExpressions;
using HairClinic.Domain.Clients;
using NodaTime;

namespace HairClinic.BookingDrill;

/// <summary>A client's browser: takes the forms of their own pages and sends them, again with the same key when no answer came.</summary>
internal sealed partial class HttpWriter(Clinic clinic, Ledger ledger, Looker looker, Uri address, int seed, CancellationToken giveUp)
    : IDisposable
{
    private readonly Random _random = new(seed);
    private readonly Sender _sender = new(ledger, new Random(-seed - 1), giveUp);
    private readonly HttpClient _http = new(new SocketsHttpHandler { UseCookies = false, AllowAutoRedirect = false })
    {
        BaseAddress = address,
        Timeout = TimeSpan.FromSeconds(30),
    };

    public async Task WriteAsync()
    {
        var client = clinic.Alone[_random.Next(clinic.Alone.Count)];
        if (_random.Next(3) > 0)
            await ChooseAsync(client);
        else
            await CallOffAsync(client);
    }

    private async Task ChooseAsync(Client client)
    {
        var service = clinic.Services[_random.Next(clinic.Services.Count)];
        var day = clinic.Salon.DayOf(SystemClock.Instance.GetCurrentInstant()).PlusDays(2 + _random.Next(10));
        var page = $"/my-hair/choose-a-time?service={service.Id}&around={day:uuuu-MM-dd}";
        if (await FormAsync(client, page, "At") is not { } form)
            return;
        var key = Guid.Parse(form.Fields["Key"]);
        ledger.Bookings[key] = client.Id;
        var start = NodaTime.Text.InstantPattern.General.Parse(form.Choices[_random.Next(form.Choices.Count)]).Value;
        form.Fields["At"] = NodaTime.Text.InstantPattern.General.Format(start);
        var answer = await _sender.SendAsync("HTTP book", () => PostAsync(client, page, form));
        if (answer?.Html.Contains("You are booked", StringComparison.Ordinal) == true)
        {
            ledger.Acknowledged[key] = new("ChooseATime", client.Id, Visit: null, start);
            ledger.Count("HTTP book");
        }
        else
            ledger.Count("HTTP book not");
    }

    private async Task CallOffAsync(Client client)
    {
        if (await looker.AnyVisitAsync(client.Id, []) is not { } found)
            return;
        var page = $"/my-hair/call-off-my-time?visit={found.Visit}";
        if (await FormAsync(client, page, "Visit") is not { } form)
            return;
        var answer = await _sender.SendAsync("HTTP call off", () => PostAsync(client, page, form));
        if (answer?.Html.Contains("It is called off.", StringComparison.Ordinal) != true)
            return;
        ledger.Acknowledged[Guid.Parse(form.Fields["Key"])] = new("CallOffMyTime", client.Id, found.Visit, Start: null, CalledOff: true);
        ledger.Count("HTTP call off");
    }

    private async Task<Form?> FormAsync(Client client, string page, string field)
    {
        var answer = await _sender.SendAsync("HTTP look", () => SendAsync(client, new(HttpMethod.Get, page)));
        if (
            answer is null
            || Forms()
                .Matches(answer.Html)
                .Select(m => m.Value)
                .FirstOrDefault(f => f.Contains($"name=\"{field}\"", StringComparison.Ordinal))
                is not { } text
        )
            return null;
        var inputs = Inputs()
            .Matches(text)
            .Select(m => m.Value)
            .Select(i => (Name: Name().Match(i).Groups[1].Value, Value: WebUtility.HtmlDecode(Value().Match(i).Groups[1].Value)))
            .ToList();
        return new(
            inputs.Where(i => i.Name.Length > 0).DistinctBy(i => i.Name).ToDictionary(i => i.Name, i => i.Value),
            [.. inputs.Where(i => i.Name == field).Select(i => i.Value)]
        )
        {
            Cookie = answer.Cookie,
        };
    }

    private Task<Answer> PostAsync(Client client, string page, Form form) =>
        SendAsync(client, new(HttpMethod.Post, page) { Content = new FormUrlEncodedContent(form.Fields) }, form.Cookie);

    /// <param name="mark">The cookie that came with the form: without it the form is not the site's own.</param>
    private async Task<Answer> SendAsync(Client client, HttpRequestMessage request, string mark = "")
    {
        using (request)
        {
            request.Headers.Add("Cookie", mark.Length > 0 ? $"{clinic.Cookies[client.Id]}; {mark}" : clinic.Cookies[client.Id]);
            request.Headers.Add("Accept", "text/html");
            request.Headers.Add("Origin", address.GetLeftPart(UriPartial.Authority));
            using var answer = await _http.SendAsync(request, CancellationToken.None);
            // 400 in an outage: the mark of the form could not be read without the database.
            if ((int)answer.StatusCode >= 500 || answer.StatusCode is HttpStatusCode.TooManyRequests or HttpStatusCode.BadRequest)
                throw new HttpRequestException($"{(int)answer.StatusCode}");
            var set = answer.Headers.TryGetValues("Set-Cookie", out var values) ? values : [];
            var cookies = set.Select(c => c.Split(';')[0])
                .Where(c => !c.StartsWith(clinic.Cookies[client.Id].Split('=')[0], StringComparison.Ordinal));
            return new(await answer.Content.ReadAsStringAsync(CancellationToken.None), string.Join("; ", cookies));
        }
    }

    public void Dispose() => _http.Dispose();

    [GeneratedRegex("<form[^>]*method=\"post\".*?</form>", RegexOptions.Singleline)]
    private static partial Regex Forms();

    [GeneratedRegex("<input[^>]*>")]
    private static partial Regex Inputs();

    [GeneratedRegex("name=\"([^\"]*)\"")]
    private static partial Regex Name();

    [GeneratedRegex("value=\"([^\"]*)\"")]
    private static partial Regex Value();

    private sealed record Answer(string Html, string Cookie);

    private sealed record Form(Dictionary<string, string> Fields, IReadOnlyList<string> Choices)
    {
        public string Cookie { get; init; } = "";
    }
}
