using System.Collections.Concurrent;
using System.Net.Sockets;
using Microsoft.AspNetCore.Hosting;
using Npgsql;

namespace HairClinic.Web.Tests.Shell;

/// <summary>The way from a site to its database, which can be cut and mended: then the database is away for that site alone.</summary>
internal sealed class DatabaseLine : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("line").FullName;
    private readonly ConcurrentDictionary<Socket, bool> _open = new();
    private string _real = "";
    private string _own = "";
    private Socket? _listener;

    /// <summary>Puts itself between a site and its database.</summary>
    public void Into(IWebHostBuilder builder)
    {
        var program = new NpgsqlConnectionStringBuilder(builder.GetSetting("ConnectionStrings:Program"));
        _real = Path.Combine(program.Host!, $".s.PGSQL.{program.Port}");
        _own = Path.Combine(_folder, $".s.PGSQL.{program.Port}");
        program.Host = _folder;
        builder.UseSetting("ConnectionStrings:Program", program.ConnectionString);
        Mend();
    }

    public void Mend()
    {
        _listener = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
        _listener.Bind(new UnixDomainSocketEndPoint(_own));
        _listener.Listen();
        _ = AcceptAsync(_listener);
    }

    public void Cut()
    {
        _listener?.Dispose();
        File.Delete(_own);
        foreach (var socket in _open.Keys)
            socket.Dispose();
        _open.Clear();
    }

    public void Dispose()
    {
        Cut();
        Directory.Delete(_folder, recursive: true);
    }

    private async Task AcceptAsync(Socket from)
    {
        try
        {
            while (true)
            {
                var near = await from.AcceptAsync();
                var far = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
                _open[near] = _open[far] = true;
                await far.ConnectAsync(new UnixDomainSocketEndPoint(_real));
                _ = PassAsync(near, far);
                _ = PassAsync(far, near);
            }
        }
        catch (Exception e) when (e is SocketException or ObjectDisposedException) { }
    }

    private async Task PassAsync(Socket from, Socket to)
    {
        var bytes = new byte[16 * 1024];
        try
        {
            while (await from.ReceiveAsync(bytes) is > 0 and var count)
                for (var sent = 0; sent < count; )
                    sent += await to.SendAsync(bytes.AsMemory(sent, count - sent));
        }
        catch (Exception e) when (e is SocketException or ObjectDisposedException) { }
        foreach (var socket in new[] { from, to })
        {
            _open.TryRemove(socket, out _);
            socket.Dispose();
        }
    }
}
