using HairClinic.Domain.Practices;
using Microsoft.AspNetCore.Components.Server;
using Microsoft.AspNetCore.SignalR;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;

namespace HairClinic.Web.Tests.Security;

[Collection(LookedAtSite.Name)]
public sealed class CircuitLimitTests(LookedAtSite looked)
{
    private static readonly Uri Live = new("wss://localhost/_blazor");

    private ClinicSite Site => looked.Site;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("https://elsewhere.example")]
    [InlineData("http://localhost")]
    [InlineData("null")]
    public async Task No_other_sites_page_opens_a_live_screen(string origin)
    {
        var e = await Assert.ThrowsAsync<InvalidOperationException>(() => Client(origin).ConnectAsync(Live, Cancel));

        Assert.Contains("403", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nobody_opens_one_without_a_sign_in()
    {
        var e = await Assert.ThrowsAsync<InvalidOperationException>(() => Client("https://localhost").ConnectAsync(Live, Cancel));

        Assert.Matches("401|302", e.Message);
    }

    [Fact]
    public async Task Our_own_page_does()
    {
        using var socket = await Client("https://localhost", await CookieAsync(StaffRole.Stylist)).ConnectAsync(Live, Cancel);

        Assert.Equal(System.Net.WebSockets.WebSocketState.Open, socket.State);
    }

    [Fact]
    public async Task One_person_opens_thirty_live_screens_and_their_neighbour_still_has_room()
    {
        var desk = await CookieAsync(StaffRole.FrontDesk);
        var manager = await CookieAsync(StaffRole.Manager);
        for (var i = 0; i < 30; i++)
            await Client("https://localhost", desk).ConnectAsync(Live, Cancel);

        var e = await Assert.ThrowsAsync<InvalidOperationException>(() => Client("https://localhost", desk).ConnectAsync(Live, Cancel));
        Assert.Contains("429", e.Message, StringComparison.Ordinal);
        using var other = await Client("https://localhost", manager).ConnectAsync(Live, Cancel);
    }

    [Fact]
    public void What_a_live_screen_may_cost_is_bounded()
    {
        var circuit = Site.Services.GetRequiredService<IOptions<CircuitOptions>>().Value;
        var hubs = Site.Services.GetRequiredService<IOptions<HubOptions>>().Value;

        Assert.False(circuit.DetailedErrors);
        Assert.InRange(circuit.DisconnectedCircuitMaxRetained, 1, 1000);
        Assert.InRange(circuit.MaxBufferedUnacknowledgedRenderBatches, 1, 10);
        Assert.InRange(hubs.MaximumReceiveMessageSize ?? long.MaxValue, 1, 64 * 1024);
    }

    private WebSocketClient Client(string origin, string? cookie = null)
    {
        var client = Site.Site.Server.CreateWebSocketClient();
        client.ConfigureRequest = request =>
        {
            request.Headers.Origin = origin;
            if (cookie is not null)
                request.Headers.Cookie = cookie;
        };
        return client;
    }

    private async Task<string> CookieAsync(StaffRole role)
    {
        var answer = await ClinicSite.TryAsync(Site.Browser(), ClinicSite.NameOf(Site.Here.Staff[role]), ClinicSite.Password);
        return string.Join("; ", answer.Headers.GetValues("Set-Cookie").Select(c => c.Split(';')[0]));
    }
}
