using Microsoft.AspNetCore.Antiforgery;

namespace HairClinic.Web.Features.Accounts;

/// <summary>Refuses a post that does not come from a page of ours. Endpoints that read no form are not checked by themselves.</summary>
public sealed class AntiforgeryFilter(IAntiforgery antiforgery) : IEndpointFilter
{
    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next) =>
        await IsOursAsync(context.HttpContext) ? await next(context) : Results.BadRequest();

    // Once the pipeline has looked, nobody may read a form that it found not to be ours: to look again would throw.
    private async Task<bool> IsOursAsync(HttpContext context) =>
        context.Features.Get<IAntiforgeryValidationFeature>()?.IsValid ?? await antiforgery.IsRequestValidAsync(context);
}

public static class AntiforgerySetup
{
    /// <summary>Lets nothing in but what our own pages sent, and says so to whoever reads the endpoint.</summary>
    public static RouteHandlerBuilder RequireFormToken(this RouteHandlerBuilder endpoint) =>
        endpoint.AddEndpointFilter<AntiforgeryFilter>().WithMetadata(new RequireAntiforgeryTokenAttribute());
}
