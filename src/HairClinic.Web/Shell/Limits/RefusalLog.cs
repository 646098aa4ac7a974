using System.Runtime.ExceptionServices;
using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Authorization.Policy;

namespace HairClinic.Web.Shell.Limits;

/// <summary>
/// Writes down who was refused what: ids, routes and addresses, never what was typed or whose page it was. Someone merely not signed in
/// any more is sent to sign in and is no event.
/// </summary>
public sealed partial class RefusalLog(ILogger<RefusalLog> log) : IAuthorizationMiddlewareResultHandler
{
    private readonly AuthorizationMiddlewareResultHandler _usual = new();

    public Task HandleAsync(
        RequestDelegate next,
        HttpContext context,
        AuthorizationPolicy policy,
        PolicyAuthorizationResult authorizeResult
    )
    {
        if (authorizeResult.Forbidden)
            LogForbidden(log, Route(context), Who(context), Address(context));
        return _usual.HandleAsync(next, context, policy, authorizeResult);
    }

    public void RecordTooOften(HttpContext context, LimitedAction? limited) =>
        LogTooOften(log, limited?.ToString() ?? "requests", Route(context), Who(context), Address(context));

    /// <summary>A form that does not come from our own page is refused by the endpoint itself; here it is only noticed.</summary>
    /// <remarks>A mark that could not be read, because its key lies in a book that is away, is none that lacks.</remarks>
    public static async Task NoticeForgedAsync(HttpContext context, RequestDelegate next)
    {
        if (context.Features.Get<IAntiforgeryValidationFeature>() is { IsValid: false } checkedMark)
        {
            if (checkedMark.Error is { } error && ConnectionLoss.Is(error))
                ExceptionDispatchInfo.Throw(error);
            context.RequestServices.GetRequiredService<RefusalLog>().RecordForged(context);
        }
        await next(context);
    }

    public void RecordForged(HttpContext context) => LogForged(log, Route(context), Who(context), Address(context));

    private static string Route(HttpContext context) => (context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText ?? "?";

    private static Guid? Who(HttpContext context) => ActorClaims.ToActor(context.User)?.Id;

    private static string Address(HttpContext context) => context.Connection.RemoteIpAddress?.ToString() ?? "?";

    [LoggerMessage(Level = LogLevel.Warning, Message = "Refused: {Route} is not open to {Actor} at {Address}.")]
    private static partial void LogForbidden(ILogger logger, string route, Guid? actor, string address);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Refused: too often ({Limited}) at {Route} by {Actor} at {Address}.")]
    private static partial void LogTooOften(ILogger logger, string limited, string route, Guid? actor, string address);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Refused: a form without our mark at {Route} by {Actor} at {Address}.")]
    private static partial void LogForged(ILogger logger, string route, Guid? actor, string address);
}
