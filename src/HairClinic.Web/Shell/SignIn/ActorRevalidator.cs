using HairClinic.Web.Accounts;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;
using HairClinic.Web.Ui.Feedback;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server;
using Microsoft.JSInterop;

namespace HairClinic.Web.Shell.SignIn;

/// <summary>A circuit lives for hours: each minute it asks whether its person may still be here, and says so on the page if not.</summary>
public sealed class ActorRevalidator(ILoggerFactory logs, IServiceScopeFactory scopes, CircuitActivityTracker activity, IJSRuntime page)
    : RevalidatingServerAuthenticationStateProvider(logs)
{
    protected override TimeSpan RevalidationInterval => TimeSpan.FromMinutes(1);

    protected override async Task<bool> ValidateAuthenticationStateAsync(
        AuthenticationState authenticationState,
        CancellationToken cancellationToken
    )
    {
        try
        {
            if (await MayStayAsync(authenticationState, cancellationToken))
                return true;
        }
        catch (Exception e) when (ConnectionLoss.Is(e))
        {
            // Nobody can say now. The database asks it anew with whatever is read or saved.
            return true;
        }
        await AccessEndedNotice.ShowAsync(page);
        return false;
    }

    private async Task<bool> MayStayAsync(AuthenticationState authenticationState, CancellationToken cancellationToken)
    {
        await using var scope = scopes.CreateAsyncScope();
        var signIn = scope.ServiceProvider.GetRequiredService<SignInManager<AppUser>>();
        if (await signIn.ValidateSecurityStampAsync(authenticationState.User) is not { } user)
            return false;
        var sessions = scope.ServiceProvider.GetRequiredService<SessionStore>();
        if (
            ActorClaims.SessionOf(authenticationState.User) is not { } session
            || !await sessions.TouchIfActiveAsync(session, user.Id, activity.Last, cancellationToken)
        )
            return false;
        var now = ActorClaims.ToActor(await signIn.CreateUserPrincipalAsync(user)) as PersonActor;
        var then = ActorClaims.ToActor(authenticationState.User) as PersonActor;
        return now is not null && then is not null && now.StaffRole == then.StaffRole && now.Salons.ToHashSet().SetEquals(then.Salons);
    }
}
