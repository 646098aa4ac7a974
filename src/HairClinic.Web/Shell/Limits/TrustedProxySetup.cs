using System.Net;
using Microsoft.AspNetCore.HttpOverrides;
using IPNetwork = System.Net.IPNetwork;

namespace HairClinic.Web.Shell.Limits;

/// <summary>
/// Whom to believe when a request says where it came from. Nobody, unless <c>Proxy:Addresses</c> names the proxies in front
/// (addresses or networks, such as <c>127.0.0.1 10.0.8.0/24</c>): anyone else could make up an address and slip under every limit.
/// </summary>
public static class TrustedProxySetup
{
    private const string Addresses = "Proxy:Addresses";

    public static IServiceCollection AddProxies(this IServiceCollection services)
    {
        services
            .AddOptions<ForwardedHeadersOptions>()
            .Configure<IConfiguration>(
                (options, configuration) =>
                {
                    // The host is not taken from the proxy: it passes the browser's on.
                    options.ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto;
                    options.KnownProxies.Clear();
                    options.KnownIPNetworks.Clear();
                    foreach (var network in ReadFrom(configuration))
                        options.KnownIPNetworks.Add(network);
                    // One proxy, one address: what stands before it was written by the sender.
                    options.ForwardLimit = 1;
                }
            );
        return services;
    }

    public static void UseProxies(this WebApplication app)
    {
        if (ReadFrom(app.Configuration).Count > 0)
            app.UseForwardedHeaders();
    }

    /// <exception cref="InvalidOperationException">An entry is neither an address nor a network.</exception>
    private static List<IPNetwork> ReadFrom(IConfiguration configuration) =>
        [
            .. (configuration[Addresses] ?? "")
                .Split([' ', ','], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
                .Select(Network),
        ];

    private static IPNetwork Network(string entry) =>
        IPNetwork.TryParse(entry, out var network) ? network
        : IPAddress.TryParse(entry, out var address) ? new IPNetwork(address, address.GetAddressBytes().Length * 8)
        : throw new InvalidOperationException(
            $"{Addresses} holds “{entry}”, which is neither an address nor a network such as 10.0.8.0/24."
        );
}
