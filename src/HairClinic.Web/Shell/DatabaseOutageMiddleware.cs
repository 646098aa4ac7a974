using HairClinic.Web.Data;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Localization;

namespace HairClinic.Web.Shell;

/// <summary>While the database cannot be reached, every page says so, and when to come back.</summary>
public sealed partial class DatabaseOutageMiddleware(RequestDelegate next, ILogger<DatabaseOutageMiddleware> log)
{
    private const string Moment = "5";

    public async Task InvokeAsync(HttpContext context)
    {
        try
        {
            await next(context);
        }
        catch (Exception e) when (ConnectionLoss.Is(e) && !context.Response.HasStarted)
        {
            LogAway(log, e);
            await SayAsync(context);
        }
    }

    private static async Task SayAsync(HttpContext context)
    {
        // The page that was begun has set headers of its own and used this request's services up.
        context.Response.Clear();
        context.Response.StatusCode = StatusCodes.Status503ServiceUnavailable;
        context.Response.Headers.RetryAfter = Moment;
        if (Limits.SameOriginOnly.IsBlazorRequest(context))
            return;
        if (context.Features.Get<IRequestCultureFeature>() is { RequestCulture: var culture })
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (culture.Culture, culture.UICulture);
        var before = context.RequestServices;
        await using var scope = before.CreateAsyncScope();
        context.RequestServices = scope.ServiceProvider;
        var page = new RazorComponentResult<DatabaseOutageDocument>(new { Looks = HttpMethods.IsGet(context.Request.Method) })
        {
            StatusCode = StatusCodes.Status503ServiceUnavailable,
        };
        await page.ExecuteAsync(context);
        context.RequestServices = before;
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "A page could not reach the database.")]
    private static partial void LogAway(ILogger logger, Exception error);
}
