using Microsoft.AspNetCore.Components.Endpoints;

namespace HairClinic.Web.Features.Practices.FirstRun;

/// <summary>While nobody practises here, every page leads to the first-run guide.</summary>
public sealed class FirstRunGate(RequestDelegate next)
{
    public const string Welcome = "/first-run/welcome";

    public async Task InvokeAsync(HttpContext context, Presence presence)
    {
        if (
            context.GetEndpoint()?.Metadata.GetMetadata<ComponentTypeMetadata>() is not null
            && !context.Request.Path.StartsWithSegments("/first-run")
            && !await presence.SomeonePractisesAsync(context.RequestAborted)
        )
            context.Response.Redirect(Welcome);
        else
            await next(context);
    }
}
