using System.Net;
using HairClinic.Web.Shell.Limits;

namespace HairClinic.Web.Tests.Security;

/// <summary>2001:db8::/32, 192.0.2.0/24 and 198.51.100.0/24 are kept for examples (RFC 3849, RFC 5737).</summary>
public sealed class RemoteNetworkTests
{
    [Theory]
    // RFC 4291, section 2.5.4: the first 64 bits are the network, the rest its owner's to choose.
    [InlineData("2001:db8:7:1::1", "2001:db8:7:1:ffff:ffff:ffff:ffff", true)]
    [InlineData("2001:db8:7:1::1", "2001:db8:7:2::1", false)]
    [InlineData("2001:db8:7:1::1", "2001:db9:7:1::1", false)]
    // Section 2.5.5.2: IPv4 as a socket for both kinds shows it.
    [InlineData("192.0.2.7", "::ffff:192.0.2.7", true)]
    [InlineData("::ffff:192.0.2.7", "::ffff:192.0.2.8", false)]
    [InlineData("192.0.2.7", "192.0.2.8", false)]
    [InlineData("192.0.2.7", "2001:db8:7:1::1", false)]
    public void Two_addresses_are_one_place_or_two(string one, string other, bool same) =>
        Assert.Equal(same, RemoteNetwork.For(IPAddress.Parse(one)) == RemoteNetwork.For(IPAddress.Parse(other)));

    [Fact]
    public void A_connection_without_an_address_has_a_place_too() => Assert.NotEmpty(RemoteNetwork.For(address: null));
}
