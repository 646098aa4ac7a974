using HairClinic.Domain.Practices;

namespace HairClinic.Web.Tests.Security;

/// <summary>One of those who try every address.</summary>
/// <param name="At">Where they belong; null for a stranger.</param>
/// <param name="Role">Null for clients and strangers.</param>
/// <param name="Guest">The client they are.</param>
public sealed record Somebody(string Name, HttpClient Browser, ClinicSite.Place? At, StaffRole? Role, ClinicSite.Guest? Guest)
{
    /// <summary>Whether the policy lets them in at all; pages without one let everybody in.</summary>
    public bool MayOpen(string? policy) =>
        policy is null
        || policy == Web.Shell.Policies.Client && Guest is not null
        || Role is { } role && RouteRules.Roles[policy].Contains(role);

    /// <summary>Whether a client, and that client's visits, are theirs to see.</summary>
    public bool MaySee(ClinicSite site, ClinicSite.Place place, ClinicSite.Guest guest) =>
        Guest is not null ? ReferenceEquals(Guest, guest)
        : Role is not { } role || At is null ? false
        : (At == site.Foreign) != (place == site.Foreign) ? false
        : role switch
        {
            StaffRole.Owner => true,
            StaffRole.Trainee => At == place && ReferenceEquals(guest, place.Own),
            _ => At == place,
        };

    /// <summary>Whether what belongs to the practice as a whole is their practice's.</summary>
    public bool IsOfTheirPractice(ClinicSite site, ClinicSite.Place place) =>
        At is not null && (At == site.Foreign) == (place == site.Foreign);

    public static async Task<IReadOnlyList<Somebody>> AllAsync(ClinicSite site) =>
        [
            new("nobody", site.Browser(), null, null, null),
            .. await StaffAsync(site, site.Here, Enum.GetValues<StaffRole>(), "of the first salon"),
            .. await StaffAsync(site, site.Elsewhere, [StaffRole.FrontDesk], "of the other salon"),
            .. await StaffAsync(site, site.Foreign, [StaffRole.Owner], "of the other practice"),
            new("a client", await site.OpenLinkAsync(site.Here.Own.Client), site.Here, null, site.Here.Own),
            new("another client", await site.OpenLinkAsync(site.Here.Mate.Client), site.Here, null, site.Here.Mate),
        ];

    private static async Task<IReadOnlyList<Somebody>> StaffAsync(ClinicSite site, ClinicSite.Place place, StaffRole[] roles, string where)
    {
        var all = new List<Somebody>();
        foreach (var role in roles)
            all.Add(new($"{role} {where}", await site.SignInAsync(ClinicSite.NameOf(place.Staff[role])), place, role, null));
        return all;
    }
}
