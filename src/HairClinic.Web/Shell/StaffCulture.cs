using System.Globalization;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Practices;

namespace HairClinic.Web.Shell;

/// <summary>Staff read the practice's language, whatever their browser is set to; a circuit takes it over from the request that opens it.</summary>
public sealed class StaffCulture(RequestDelegate next)
{
    public async Task InvokeAsync(HttpContext context, CurrentActor current, CultureBook cultures)
    {
        if (current.OrNull is PersonActor person && await cultures.OfAsync(person, context.RequestAborted) is { } culture)
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = culture;
        await next(context);
    }
}
