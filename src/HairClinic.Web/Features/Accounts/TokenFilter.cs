using Microsoft.AspNetCore.Antiforgery;

namespace HairClinic.Web.Features.Accounts;

/// <summary>Refuses a post that does not come from a page of ours. Endpoints that read no form are not checked by themselves.</summary>
public sealed class TokenFilter(IAntiforgery antiforgery) : IEndpointFilter
{
    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next) =>
        await antiforgery.IsRequestValidAsync(context.HttpContext) ? await next(context) : Results.BadRequest();
}

public static class TokenFilterSetup
{
    /// <summary>Lets nothing in but what our own pages sent, and says so to whoever reads the endpoint.</summary>
    public static RouteHandlerBuilder AskForMark(this RouteHandlerBuilder endpoint) =>
        endpoint.AddEndpointFilter<TokenFilter>().WithMetadata(new RequireAntiforgeryTokenAttribute());
}
