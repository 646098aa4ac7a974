using HairClinic.Web.Accounts;

namespace HairClinic.Web.Shell;

/// <summary>Opens what carries <see cref="StepUpAttribute"/> only to someone who proved a moment ago who they are.</summary>
public sealed class StepUpGate(RequestDelegate next)
{
    public async Task InvokeAsync(HttpContext context, StepUpCheck check)
    {
        if (context.GetEndpoint()?.Metadata.GetMetadata<StepUpAttribute>() is null || await check.IsFreshAsync(context.RequestAborted))
            await next(context);
        else if (HttpMethods.IsGet(context.Request.Method))
            context.Response.Redirect(check.PageFor(context.Request.Path + context.Request.QueryString));
        else
        {
            context.Response.StatusCode = StatusCodes.Status403Forbidden;
            await context.Response.WriteAsync(
                $"Nothing was done: prove anew at {StepUpCheck.Page} that it is you, then try again.",
                context.RequestAborted
            );
        }
    }
}
