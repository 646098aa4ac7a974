using Microsoft.AspNetCore.Components.Endpoints;

namespace HairClinic.Web.Features.Settings;

/// <summary>While nobody practises here, every page leads to the first-run guide.</summary>
public sealed class FirstRunGate(RequestDelegate next)
{
    public const string Welcome = "/first-run/create-practice";

    public async Task InvokeAsync(HttpContext context, PracticePresence presence)
    {
        if (IsPage(context) && !context.Request.Path.StartsWithSegments("/first-run") && !await presence.AnyAsync(context.RequestAborted))
            context.Response.Redirect(Welcome);
        else
            await next(context);
    }

    // An address that leads nowhere would end at a page too: the one that says so.
    private static bool IsPage(HttpContext context) =>
        context.GetEndpoint() is { } endpoint
            ? endpoint.Metadata.GetMetadata<ComponentTypeMetadata>() is not null
            : HttpMethods.IsGet(context.Request.Method)
                && context.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.Ordinal);
}
