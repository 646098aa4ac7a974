using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;

namespace HairClinic.Web.Tests.Security;

/// <summary>Lets a request of a test say from which address it comes, as its connection would.</summary>
public static class SentFrom
{
    private const string Header = "Test-Address";

    public static void Believe(IWebHostBuilder site) =>
        site.ConfigureTestServices(services => services.AddSingleton<IStartupFilter>(new Filter()));

    /// <summary>Everything this browser asks comes from there.</summary>
    public static HttpClient At(this HttpClient browser, string address)
    {
        browser.DefaultRequestHeaders.Remove(Header);
        browser.DefaultRequestHeaders.Add(Header, address);
        return browser;
    }

    public static HttpRequestMessage At(this HttpRequestMessage request, string address)
    {
        request.Headers.Add(Header, address);
        return request;
    }

    private sealed class Filter : IStartupFilter
    {
        public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) =>
            app =>
            {
                app.Use(
                    (context, rest) =>
                    {
                        if (context.Request.Headers[Header] is [{ } address])
                            context.Connection.RemoteIpAddress = IPAddress.Parse(address);
                        return rest(context);
                    }
                );
                next(app);
            };
    }
}
