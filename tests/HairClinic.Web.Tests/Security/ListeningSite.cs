using System.Net;
using HairClinic.Web.Tests.Features.Settings.FirstRun;
using Microsoft.AspNetCore.Hosting;

namespace HairClinic.Web.Tests.Security;

/// <summary>The program on a real port, where the server's own limits hold.</summary>
public sealed class ListeningSite : IAsyncDisposable
{
    private readonly EmptySite _site;

    private ListeningSite(EmptySite site)
    {
        _site = site;
        site.UseKestrel(k => k.Listen(IPAddress.Loopback, 0));
        site.StartServer();
        Address = site.ClientOptions.BaseAddress;
    }

    public Uri Address { get; }

    public static async Task<ListeningSite> OpenAsync(PgServer server, params (string Setting, string Value)[] settings) =>
        new(
            await EmptySite.OpenAsync(
                server,
                builder =>
                {
                    foreach (var (setting, value) in settings)
                        builder.UseSetting(setting, value);
                }
            )
        );

    public HttpClient Client() => new(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = Address };

    public ValueTask DisposeAsync() => _site.DisposeAsync();
}
