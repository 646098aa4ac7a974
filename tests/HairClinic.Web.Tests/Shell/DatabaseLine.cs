using System.Collections.Concurrent;
using System.Net.Sockets;
using Microsoft.AspNetCore.Hosting;
using Npgsql;

namespace HairClinic.Web.Tests.Shell;

/// <summary>The way from a site to its database, which can be cut and mended: then the database is away for that site alone.</summary>
internal sealed class DatabaseLine : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("line").FullName;
    private readonly ConcurrentDictionary<Socket, bool> open = new();
    private string real = "";
    private string own = "";
    private Socket? listener;

    /// <summary>Puts itself between a site and its database.</summary>
    public void Into(IWebHostBuilder builder)
    {
        var program = new NpgsqlConnectionStringBuilder(builder.GetSetting("ConnectionStrings:Program"));
        real = Path.Combine(program.Host!, $".s.PGSQL.{program.Port}");
        own = Path.Combine(folder, $".s.PGSQL.{program.Port}");
        program.Host = folder;
        builder.UseSetting("ConnectionStrings:Program", program.ConnectionString);
        Mend();
    }

    public void Mend()
    {
        listener = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
        listener.Bind(new UnixDomainSocketEndPoint(own));
        listener.Listen();
        _ = AcceptAsync(listener);
    }

    public void Cut()
    {
        listener?.Dispose();
        File.Delete(own);
        foreach (var socket in open.Keys)
            socket.Dispose();
        open.Clear();
    }

    public void Dispose()
    {
        Cut();
        Directory.Delete(folder, recursive: true);
    }

    private async Task AcceptAsync(Socket from)
    {
        try
        {
            while (true)
            {
                var near = await from.AcceptAsync();
                var far = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
                open[near] = open[far] = true;
                await far.ConnectAsync(new UnixDomainSocketEndPoint(real));
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
            open.TryRemove(socket, out _);
            socket.Dispose();
        }
    }
}
