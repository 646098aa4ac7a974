using HairClinic.Web.Fence;
using HairClinic.Web.Shell.SignIn;
using Microsoft.AspNetCore.Authentication;

namespace HairClinic.Web.Shell;

/// <summary>
/// Whoever is no longer what their cookie says is not shown an error: staff are looked up afresh (which lets them on or out), a
/// client is signed out.
/// </summary>
public sealed class StaleActorMiddleware(RequestDelegate next)
{
    public async Task InvokeAsync(HttpContext context, CurrentActor current)
    {
        try
        {
            await next(context);
        }
        catch (StaleActorException) when (!context.Response.HasStarted)
        {
            if (current.OrNull is ClientActor)
            {
                await context.SignOutAsync(AccountsSetup.ClientScheme);
                context.Response.Redirect("/my-hair/ask-link");
            }
            else if (HttpMethods.IsGet(context.Request.Method) && !context.Request.Path.StartsWithSegments("/refresh-sign-in"))
            {
                var here = context.Request.Path + context.Request.QueryString;
                context.Response.Redirect($"/refresh-sign-in?returnTo={Uri.EscapeDataString(here)}");
            }
            else
            {
                context.Response.Redirect("/");
            }
        }
    }
}
