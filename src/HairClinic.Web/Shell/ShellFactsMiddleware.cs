using HairClinic.Web.Data;
using HairClinic.Web.Fence;
using Microsoft.AspNetCore.Components.Endpoints;

namespace HairClinic.Web.Shell;

/// <summary>Fills in what the frame around a page shows, once per request for a page.</summary>
public sealed class ShellFactsMiddleware(RequestDelegate next)
{
    public async Task InvokeAsync(HttpContext context, CurrentActor current, SalonNames salons, ShellFactsHolder holder)
    {
        if (current.OrNull is PersonActor person && context.GetEndpoint()?.Metadata.GetMetadata<ComponentTypeMetadata>() is not null)
        {
            var names = await salons.LoadAsync(person, context.RequestAborted);
            var name = context.User.FindFirst(ActorClaims.DisplayName)?.Value ?? "";
            holder.Facts = new ShellFacts(name, [.. names.Select(n => new SalonOption(n.Id, n.Name))], person.AtSalon)
            {
                LockAfterMinutes = ActorClaims.LockAfterOf(context.User),
            };
        }
        await next(context);
    }
}

/// <summary>Carries the frame's facts from the request to the layout.</summary>
public sealed class ShellFactsHolder
{
    public ShellFacts? Facts { get; set; }
}
