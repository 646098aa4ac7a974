using System.Net;
using System.Net.Sockets;
using System.Text;
using HairClinic.Web.Shell.Limits;

namespace HairClinic.Web.Tests.Security;

public sealed class UploadLimitTests(PgServer server)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("/sign-in")]
    [InlineData("/sign-out")]
    [InlineData("/first-run/create-practice")]
    public async Task Nothing_larger_than_a_form_is_taken_where_a_form_is_expected(string path)
    {
        await using var site = await ListeningSite.OpenAsync(server);
        using var large = new ByteArrayContent(new byte[RequestLimits.UsualBytes + 1]);
        large.Headers.ContentType = new("application/x-www-form-urlencoded");

        using var answer = await site.Client().PostAsync(path, large, Cancel);

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    [Fact]
    public async Task Nor_if_its_size_is_not_told()
    {
        await using var site = await ListeningSite.OpenAsync(server);
        using var request = new HttpRequestMessage(HttpMethod.Post, "/first-run/create-practice") { Content = new Endless() };
        request.Headers.TransferEncodingChunked = true;
        request.Content.Headers.ContentType = new("application/x-www-form-urlencoded");

        // The server answers or hangs up; what it never does is read on.
        try
        {
            using var answer = await site.Client().SendAsync(request, Cancel);
            Assert.InRange((int)answer.StatusCode, 400, 499);
        }
        catch (HttpRequestException) { }
        Assert.InRange(Endless.Sent, 1, 8 * 1024 * 1024);
    }

    [Fact]
    public async Task Addresses_and_headers_are_bounded()
    {
        await using var site = await ListeningSite.OpenAsync(server);
        using var many = new HttpRequestMessage(HttpMethod.Get, "/alive");
        for (var i = 0; i < 80; i++)
            many.Headers.Add($"X-Number-{i}", "1");

        Assert.Equal(
            HttpStatusCode.RequestUriTooLong,
            (await site.Client().GetAsync($"/find?q={new string('a', 5000)}", Cancel)).StatusCode
        );
        Assert.Equal(HttpStatusCode.RequestHeaderFieldsTooLarge, (await site.Client().SendAsync(many, Cancel)).StatusCode);
    }

    [Fact]
    public async Task Whoever_drips_a_request_is_let_go_after_ten_seconds()
    {
        await using var site = await ListeningSite.OpenAsync(server);
        using var connection = new TcpClient();
        await connection.ConnectAsync(site.Address.Host, site.Address.Port, Cancel);
        var stream = connection.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes("GET /alive HTTP/1.1\r\nHost: localhost\r\n"), Cancel);

        var answer = new byte[400];
        var read = await stream.ReadAsync(answer, Cancel).AsTask().WaitAsync(TimeSpan.FromSeconds(20), Cancel);

        Assert.True(read == 0 || Encoding.ASCII.GetString(answer, 0, read).Contains("408", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_server_does_not_say_what_it_is()
    {
        await using var site = await ListeningSite.OpenAsync(server);

        Assert.False((await site.Client().GetAsync("/alive", Cancel)).Headers.Contains("Server"));
    }

    private sealed class Endless : HttpContent
    {
        public static long Sent { get; private set; }

        protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
        {
            var piece = new byte[16 * 1024];
            for (Sent = 0; Sent < 64 * 1024 * 1024; Sent += piece.Length)
                await stream.WriteAsync(piece);
        }

        protected override bool TryComputeLength(out long length)
        {
            length = 0;
            return false;
        }
    }
}
