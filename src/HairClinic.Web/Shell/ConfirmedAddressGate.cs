using HairClinic.Web.Fence;

namespace HairClinic.Web.Shell;

/// <summary>
/// Leads a client whose address opens dates only from what carries <see cref="ConfirmedAddressOnlyAttribute"/> to where it says why. It is a
/// courtesy: what such an address reads, the database decides.
/// </summary>
public sealed class ConfirmedAddressGate(RequestDelegate next)
{
    public const string Page = "/my-hair/address-not-confirmed";

    public Task InvokeAsync(HttpContext context)
    {
        if (
            context.GetEndpoint()?.Metadata.GetMetadata<ConfirmedAddressOnlyAttribute>() is null
            || !context.User.HasClaim(c => c.Type == ActorClaims.DatesOnly)
        )
            return next(context);
        context.Response.Redirect(Page);
        return Task.CompletedTask;
    }
}
