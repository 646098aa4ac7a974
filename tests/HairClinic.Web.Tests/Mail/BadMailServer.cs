using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace HairClinic.Web.Tests.Mail;

/// <summary>A mail server on this machine's own address that does not do as it should.</summary>
internal sealed class BadMailServer : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _stopping = new();
    private readonly Task _running;
    private int _asked;
    private int _heard;

    public BadMailServer(Way way)
    {
        Does = way;
        _listener.Start();
        _running = ServeAsync();
    }

    public enum Way
    {
        /// <summary>It does as it should after all.</summary>
        Takes,

        /// <summary>It takes the line and says nothing.</summary>
        Hangs,

        /// <summary>No such mailbox, for good.</summary>
        Refuses,

        /// <summary>It hears the letter out and asks to come again later.</summary>
        RefusesForNow,

        /// <summary>It hears the letter out and is gone without an answer.</summary>
        DropsAfterData,

        /// <summary>It takes the letter, says so and is gone.</summary>
        DropsAfterAnswer,
    }

    /// <summary>What it does to whoever comes from now on.</summary>
    public Way Does { get; set; }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    /// <summary>How often somebody came.</summary>
    public int Asked => _asked;

    /// <summary>How many letters it heard to their end.</summary>
    public int Heard => _heard;

    public string LastText { get; private set; } = "";

    /// <summary>The Message-ID of every letter it heard to its end, each time.</summary>
    public ConcurrentQueue<string> Ids { get; } = new();

    public async ValueTask DisposeAsync()
    {
        await _stopping.CancelAsync();
        _listener.Stop();
        await _running;
        _stopping.Dispose();
    }

    private async Task ServeAsync()
    {
        List<Task> lines = [];
        try
        {
            while (true)
                lines.Add(TalkAsync(await _listener.AcceptTcpClientAsync(_stopping.Token)));
        }
        catch (Exception e) when (e is OperationCanceledException or SocketException) { }
        await Task.WhenAll(lines);
    }

    private async Task TalkAsync(TcpClient line)
    {
        using var _ = line;
        Interlocked.Increment(ref _asked);
        try
        {
            var way = Does;
            if (way is Way.Hangs)
                await Task.Delay(Timeout.Infinite, _stopping.Token);
            await ConverseAsync(line.GetStream(), way);
        }
        catch (Exception e) when (e is OperationCanceledException or IOException) { }
    }

    private async Task ConverseAsync(NetworkStream stream, Way way)
    {
        using var reader = new StreamReader(stream, Encoding.UTF8);
        await SayAsync("220 localhost");
        while (await reader.ReadLineAsync(_stopping.Token) is { } said)
        {
            switch (said[..Math.Min(4, said.Length)].ToUpperInvariant())
            {
                case "RCPT" when way is Way.Refuses:
                    await SayAsync("550 5.1.1 no such mailbox");
                    break;
                case "DATA":
                    await SayAsync("354 go on");
                    await HearAsync(reader);
                    if (way is Way.DropsAfterData)
                        return;
                    await SayAsync(way is Way.RefusesForNow ? "451 4.3.0 later" : "250 taken");
                    if (way is Way.DropsAfterAnswer)
                        return;
                    break;
                case "QUIT":
                    await SayAsync("221 bye");
                    return;
                default:
                    await SayAsync("250 well");
                    break;
            }
        }

        async Task SayAsync(string answer) => await stream.WriteAsync(Encoding.ASCII.GetBytes(answer + "\r\n"), _stopping.Token);
    }

    private async Task HearAsync(StreamReader reader)
    {
        var text = new StringBuilder();
        while (await reader.ReadLineAsync(_stopping.Token) is { } line && line != ".")
            text.AppendLine(line);
        LastText = text.ToString();
        Ids.Enqueue(LastText.Split("Message-Id: ")[1].Split('\n')[0].Trim());
        Interlocked.Increment(ref _heard);
    }
}
