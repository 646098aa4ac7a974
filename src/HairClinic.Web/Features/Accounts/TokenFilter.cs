using Microsoft.AspNetCore.Antiforgery;

namespace HairClinic.Web.Features.Accounts;

/// <summary>Refuses a post that does not come from a page of ours. Endpoints that read no form are not checked by themselves.</summary>
public sealed class TokenFilter(IAntiforgery antiforgery) : IEndpointFilter
{
    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next) =>
        await antiforgery.IsRequestValidAsync(context.HttpContext) ? await next(context) : Results.BadRequest();
}
