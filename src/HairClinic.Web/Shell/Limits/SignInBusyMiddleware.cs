using HairClinic.Web.Accounts;

namespace HairClinic.Web.Shell.Limits;

/// <summary>Whoever signs in while the machine has passwords enough to check is told to come back in a moment.</summary>
public sealed class SignInBusyMiddleware(RequestDelegate next)
{
    private static readonly TimeSpan Moment = TimeSpan.FromSeconds(5);

    public async Task InvokeAsync(HttpContext context)
    {
        try
        {
            await next(context);
        }
        catch (TooBusyException) when (!context.Response.HasStarted)
        {
            // The page that was begun has set headers of its own and used this request's services up.
            context.Response.Clear();
            var before = context.RequestServices;
            await using var scope = before.CreateAsyncScope();
            context.RequestServices = scope.ServiceProvider;
            await RateLimits.SayTryLaterAsync(context, Moment, busy: true);
            context.RequestServices = before;
        }
    }
}
