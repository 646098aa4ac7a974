using System.Buffers;
using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using MimeKit;
using SmtpServer;
using SmtpServer.ComponentModel;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace HairClinic.Web.Tests.Mail;

/// <summary>A mail server on this machine's own address, without encryption, that keeps what it is given.</summary>
internal sealed class MailListener : MessageStore, IAsyncDisposable
{
    private readonly CancellationTokenSource _stopping = new();
    private readonly Task _running;

    public MailListener()
    {
        using (var probe = new TcpListener(IPAddress.Loopback, 0))
        {
            probe.Start();
            Port = ((IPEndPoint)probe.LocalEndpoint).Port;
        }
        var options = new SmtpServerOptionsBuilder()
            .ServerName("localhost")
            .Endpoint(e => e.Endpoint(new IPEndPoint(IPAddress.Loopback, Port)))
            .Build();
        var services = new ServiceProvider();
        services.Add(this);
        _running = new SmtpServer.SmtpServer(options, services).StartAsync(_stopping.Token);
    }

    public int Port { get; }

    /// <summary>It lets everybody in and takes no letter.</summary>
    public bool Refuses { get; init; }

    public ConcurrentQueue<MimeMessage> Taken { get; } = new();

    public override async Task<SmtpResponse> SaveAsync(
        ISessionContext context,
        IMessageTransaction transaction,
        ReadOnlySequence<byte> buffer,
        CancellationToken cancellationToken
    )
    {
        if (Refuses)
            return SmtpResponse.TransactionFailed;
        using var stream = new MemoryStream(buffer.ToArray());
        Taken.Enqueue(await MimeMessage.LoadAsync(stream, cancellationToken));
        return SmtpResponse.Ok;
    }

    public async ValueTask DisposeAsync()
    {
        await _stopping.CancelAsync();
        await _running;
        _stopping.Dispose();
    }
}
