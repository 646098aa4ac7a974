namespace HairClinic.Web.Shell.Limits;

/// <summary>
/// Live screens and changes come from our own pages only. Forms carry a mark of their own besides; a live screen's connection has
/// none, and browsers let any site open one.
/// </summary>
public static class SameOriginOnly
{
    public static Task CheckAsync(HttpContext context, RequestDelegate next)
    {
        var isLive = IsBlazorRequest(context);
        var changes = !HttpMethods.IsGet(context.Request.Method) && !HttpMethods.IsHead(context.Request.Method);
        if (isLive && IsForeign(context.Request) || changes && context.Request.Headers["Sec-Fetch-Site"] == "cross-site")
        {
            context.RequestServices.GetRequiredService<RefusalLog>().RecordForged(context);
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            return Task.CompletedTask;
        }
        return next(context);
    }

    /// <summary>Whether a request opens or serves the connection of a live screen.</summary>
    public static bool IsBlazorRequest(HttpContext context) => context.Request.Path.StartsWithSegments("/_blazor");

    // Behind a proxy nobody named we cannot tell how the browser came, so plain may be secure; secure is never plain.
    private static bool IsForeign(HttpRequest request) =>
        request.Headers.Origin.ToString() is { Length: > 0 } origin
        && !(
            Uri.TryCreate(origin, UriKind.Absolute, out var from)
            && string.Equals(from.Host, request.Host.Host, StringComparison.OrdinalIgnoreCase)
            && (request.Host.Port is { } port ? from.Port == port : from.IsDefaultPort)
            && (from.Scheme == request.Scheme || !request.IsHttps)
        );
}
