using System.Security.Authentication;
using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace HairClinic.Web.Shell.Limits;

/// <summary>How large and how slow a request may be. Endpoints that take files say so themselves, with a size limit of their own.</summary>
public static class RequestLimits
{
    /// <summary>The longest form of ours, with every note filled in, is below 100 kB.</summary>
    public const int UsualBytes = 256 * 1024;

    public static IServiceCollection AddRequestSizeLimits(this IServiceCollection services) =>
        services
            .Configure<KestrelServerOptions>(server =>
            {
                server.AddServerHeader = false;
                server.ConfigureHttpsDefaults(https => https.SslProtocols = SslProtocols.Tls12 | SslProtocols.Tls13);
                server.Limits.MaxRequestBodySize = UsualBytes;
                // Whoever drips a request holds a connection: ten seconds for the headers, 240 bytes a second for the body.
                server.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(10);
                server.Limits.MinRequestBodyDataRate = new MinDataRate(bytesPerSecond: 240, gracePeriod: TimeSpan.FromSeconds(5));
                server.Limits.KeepAliveTimeout = TimeSpan.FromMinutes(2);
                // Addresses here are short and cookies few: room for a sign-in in several pieces, no more.
                server.Limits.MaxRequestLineSize = 4 * 1024;
                server.Limits.MaxRequestHeadersTotalSize = 24 * 1024;
                server.Limits.MaxRequestHeaderCount = 64;
                server.Limits.MaxConcurrentConnections = 4000;
                server.Limits.MaxConcurrentUpgradedConnections = 2000;
            })
            .Configure<FormOptions>(forms =>
            {
                forms.ValueCountLimit = 512;
                forms.KeyLengthLimit = 256;
                forms.ValueLengthLimit = UsualBytes;
                forms.MultipartHeadersCountLimit = 8;
                forms.MultipartHeadersLengthLimit = 4 * 1024;
            })
            .Configure<RazorComponentsServiceOptions>(forms =>
            {
                forms.MaxFormMappingCollectionSize = 256;
                forms.MaxFormMappingRecursionDepth = 8;
                forms.MaxFormMappingErrorCount = 50;
                forms.MaxFormMappingKeySize = 256;
            });

    /// <summary>Says that something is too large before reading any of it. A form that brings a file has a size of its own.</summary>
    public static Task RefuseTooLargeAsync(HttpContext context, RequestDelegate next)
    {
        var most = context.Features.Get<IHttpMaxRequestBodySizeFeature>()?.MaxRequestBodySize;
        return context.Request.ContentLength > most && FileFormReader.MaxFileBytesOf(context) is null
            ? SayTooLargeAsync(context)
            : next(context);
    }

    /// <summary>In words: an empty answer would leave its reader with a blank screen.</summary>
    public static Task SayTooLargeAsync(HttpContext context)
    {
        if (SameOriginOnly.IsBlazorRequest(context))
        {
            context.Response.StatusCode = StatusCodes.Status413PayloadTooLarge;
            return Task.CompletedTask;
        }
        // Only the path: the query may hold what somebody looked for.
        var said = new { Megabytes = FileFormReader.MaxFileBytesOf(context) / 1024 / 1024, Back = context.Request.Path.Value ?? "/" };
        return new RazorComponentResult<TooLargeDocument>(said) { StatusCode = StatusCodes.Status413PayloadTooLarge }.ExecuteAsync(context);
    }
}
