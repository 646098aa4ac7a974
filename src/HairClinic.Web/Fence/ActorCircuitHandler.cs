using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server.Circuits;

namespace HairClinic.Web.Fence;

/// <summary>Sets the actor of a circuit from its sign-in, before its first component is made.</summary>
public sealed class ActorCircuitHandler(AuthenticationStateProvider authentication, CurrentActor current) : CircuitHandler
{
    public override async Task OnCircuitOpenedAsync(Circuit circuit, CancellationToken cancellationToken)
    {
        var state = await authentication.GetAuthenticationStateAsync();
        if (ActorClaims.ToActor(state.User) is { } actor)
            current.Set(actor);
    }
}
