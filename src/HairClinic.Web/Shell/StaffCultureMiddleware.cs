using HairClinic.Web.Fence;
using HairClinic.Web.Language;
using Microsoft.AspNetCore.Components.Endpoints;

namespace HairClinic.Web.Shell;

/// <summary>Staff read the practice's language, whatever their browser is set to; a circuit takes it over from the request that opens it.</summary>
public sealed class StaffCultureMiddleware(RequestDelegate next)
{
    public async Task InvokeAsync(HttpContext context, CurrentActor current, PracticeCultureCache cultures)
    {
        if (current.OrNull is PersonActor person && await cultures.FindAsync(person, context.RequestAborted) is { } culture)
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = culture;
        // Nobody is known yet: a page for staff is not shown half in the browser's language either.
        else if (IsStaffPage(context.GetEndpoint()) && !Languages.IsComplete(CultureInfo.CurrentUICulture))
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("en-GB");
        await next(context);
    }

    private static bool IsStaffPage(Endpoint? endpoint) =>
        endpoint?.Metadata.GetMetadata<ComponentTypeMetadata>() is not null && !ClientPageDocument.Serves(endpoint);
}
