namespace HairClinic.Web.Fence;

/// <summary>Sets the actor of a request from its sign-in, after authorisation chose the scheme.</summary>
public sealed class ActorMiddleware(RequestDelegate next)
{
    public Task InvokeAsync(HttpContext context, CurrentActor current)
    {
        if (ActorClaims.ToActor(context.User) is { } actor)
            current.Set(actor);
        return next(context);
    }
}
