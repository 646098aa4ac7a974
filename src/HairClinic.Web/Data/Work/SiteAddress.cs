using System.Net;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace HairClinic.Web.Data.Work;

/// <summary>
/// Where people reach this site: <c>Site:Address</c>, else this machine's own address while the program listens only locally. Never
/// what a request says: otherwise whoever asks for somebody's link could make it lead to their own site.
/// </summary>
public sealed class SiteAddress
{
    public const string Setting = "Site:Address";

    private readonly IServer? _server;
    private readonly bool _behindProxy;

    /// <exception cref="InvalidOperationException">The setting is no address of a site.</exception>
    public SiteAddress(IConfiguration configuration, IServer? server = null)
    {
        _server = server;
        _behindProxy = !string.IsNullOrWhiteSpace(configuration["Proxy:Addresses"]);
        Set = Read(configuration[Setting]);
    }

    /// <summary>As it was set; null where it was not.</summary>
    public Uri? Set { get; }

    /// <summary>For what is read away from this screen, such as letters: without a slash at its end. Null: not set, and not to be guessed.</summary>
    public string? Url => (Set ?? Listening())?.GetLeftPart(UriPartial.Authority);

    /// <summary>For what somebody signed in reads on their own screen: where it was not set, their own browser knows.</summary>
    /// <param name="page">The address of their page.</param>
    public string ConfiguredOrPageBaseUrl(string page) => (Set ?? new Uri(page)).GetLeftPart(UriPartial.Authority);

    private static Uri? Read(string? text)
    {
        if (string.IsNullOrWhiteSpace(text))
            return null;
        return
            Uri.TryCreate(text.Trim(), UriKind.Absolute, out var address)
            && address.Scheme is "http" or "https"
            && address is { UserInfo: "", AbsolutePath: "/", Query: "", Fragment: "" }
            && address.Host.Length > 0
            ? address
            : throw new InvalidOperationException(
                "Site__Address is not the address of a site. Write it as https://book.example, with nothing after the name but a port."
            );
    }

    // Where nothing listens (a command of the program), it is this machine.
    private Uri? Listening()
    {
        if (_behindProxy)
            return null;
        var addresses = _server?.Features.Get<IServerAddressesFeature>()?.Addresses.Select(BindingAddress.Parse).ToList() ?? [];
        if (addresses.Count == 0)
            return new Uri("http://localhost");
        return addresses.All(IsThisMachine) ? new Uri($"{addresses[0].Scheme}://{addresses[0].Host}:{addresses[0].Port}") : null;
    }

    private static bool IsThisMachine(BindingAddress address) =>
        !address.IsUnixPipe
        && !address.IsNamedPipe
        && (
            string.Equals(address.Host, "localhost", StringComparison.OrdinalIgnoreCase)
            || IPAddress.TryParse(address.Host, out var ip) && IPAddress.IsLoopback(ip)
        );
}
