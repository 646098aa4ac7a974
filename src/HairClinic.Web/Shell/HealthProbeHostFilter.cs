using System.Net;
using Microsoft.AspNetCore.HostFiltering;

namespace HairClinic.Web.Shell;

/// <summary>
/// Whoever watches over the program asks by the machine's address, not by the site's name, and is answered all the same: before hosts
/// are looked at, such a question is taken to have named the site. Nothing in the two answers depends on the name.
/// </summary>
public sealed class HealthProbeHostFilter(IOptions<HostFilteringOptions> hosts) : IStartupFilter
{
    public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) =>
        app =>
        {
            app.Use(
                (context, after) =>
                {
                    if (
                        context.Request.Path.Value is HealthProbes.Alive or HealthProbes.Ready
                        && IsAddress(context.Request.Host.Host)
                        && hosts.Value.AllowedHosts is [var name, ..]
                        && name != "*"
                    )
                        context.Request.Host = new HostString(name.Replace("*", "probe", StringComparison.Ordinal));
                    return after(context);
                }
            );
            next(app);
        };

    private static bool IsAddress(string host) => host is "" or "localhost" || IPAddress.TryParse(host, out _);
}
