using HairClinic.Web.Fence;
using HairClinic.Web.Shell.SignIn;
using Microsoft.AspNetCore.Authorization;

namespace HairClinic.Web.Shell;

/// <summary>Who may open which page. Every route names one of these; a route without one refuses everybody.</summary>
public static class Policies
{
    /// <summary>Anyone who works in the practice.</summary>
    public const string Staff = "staff";

    /// <summary>Who books and rings: owner, manager, front desk.</summary>
    public const string Desk = "desk";

    /// <summary>Who books the next visit: whoever rings, and the stylist at the chair.</summary>
    public const string Book = "book";

    /// <summary>Who works on clients: owner, stylist, trainee.</summary>
    public const string Chair = "chair";

    /// <summary>Owner and manager.</summary>
    public const string Manage = "manage";

    public const string Owner = "owner";

    /// <summary>Who hears what clients tell of their health: owner, manager, stylist.</summary>
    public const string Health = "health";

    /// <summary>Who sees photos: whoever hears of health, and a trainee for the clients they work on.</summary>
    public const string Photos = "photos";

    /// <summary>A client, who sees only themselves.</summary>
    public const string Client = "client";

    public static void Register(AuthorizationOptions options)
    {
        Roles(Staff, Enum.GetValues<StaffRole>());
        Roles(Desk, StaffRole.Owner, StaffRole.Manager, StaffRole.FrontDesk);
        Roles(Book, [.. Enum.GetValues<StaffRole>().Where(StaffPermissions.MayBook)]);
        Roles(Chair, StaffRole.Owner, StaffRole.Stylist, StaffRole.Trainee);
        Roles(Manage, StaffRole.Owner, StaffRole.Manager);
        Roles(Owner, StaffRole.Owner);
        Roles(Health, StaffRole.Owner, StaffRole.Manager, StaffRole.Stylist);
        Roles(Photos, StaffRole.Owner, StaffRole.Manager, StaffRole.Stylist, StaffRole.Trainee);
        options.AddPolicy(
            Client,
            p => p.AddAuthenticationSchemes(AccountsSetup.ClientScheme).RequireAuthenticatedUser().RequireClaim(ActorClaims.Client)
        );
        options.FallbackPolicy = options.GetPolicy(Staff);

        void Roles(string name, params StaffRole[] roles) =>
            options.AddPolicy(
                name,
                p =>
                    p.AddAuthenticationSchemes(IdentityConstants.ApplicationScheme)
                        .RequireAuthenticatedUser()
                        .RequireClaim(ActorClaims.Person)
                        .RequireRole(roles.Select(r => r.ToString()))
            );
    }
}
