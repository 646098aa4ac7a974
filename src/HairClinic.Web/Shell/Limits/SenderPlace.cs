using System.Net;
using System.Net.Sockets;

namespace HairClinic.Web.Shell.Limits;

/// <summary>The place a request came from, as it is counted: one connection to the internet, whatever address in it was used.</summary>
public static class SenderPlace
{
    private const int NetworkBytes = 8;

    public static string Of(HttpContext context) => Of(context.Connection.RemoteIpAddress);

    /// <remarks>
    /// An IPv6 connection is given 2^64 addresses at least (RFC 4291, section 2.5.4), and whoever has it takes a new one as they like:
    /// its first 64 bits are the place. IPv4 as a socket for both kinds shows it (section 2.5.5.2) is IPv4.
    /// </remarks>
    public static string Of(IPAddress? address)
    {
        if (address is null)
            return "?";
        if (address.IsIPv4MappedToIPv6)
            address = address.MapToIPv4();
        if (address.AddressFamily != AddressFamily.InterNetworkV6)
            return address.ToString();
        var bytes = address.GetAddressBytes();
        bytes.AsSpan(NetworkBytes).Clear();
        return $"{new IPAddress(bytes)}/64";
    }
}
