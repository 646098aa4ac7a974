using HairClinic.Web.Accounts;
using HairClinic.Web.Accounts.Tablets;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Settings;

/// <summary>
/// The browser in front of an owner or manager becomes a shared tablet. Whoever made it is signed out of it: from here on everybody
/// signs in as the tablet's people do.
/// </summary>
public sealed class MakeTablet(
    ClinicDbFactory databases,
    TabletStore tablets,
    StaffSignInManager accounts,
    StepUpCheck check,
    CurrentActor current,
    IClock clock
)
{
    /// <summary>The tablet this browser is already.</summary>
    public async Task<string?> OpenAsync(CancellationToken cancellation) => (await tablets.FindCurrentAsync(cancellation))?.Name;

    /// <exception cref="Refusal">They did not prove who they are, or it is a shared tablet already.</exception>
    public async Task SaveAsync(Input input, CancellationToken cancellation)
    {
        await check.RefuseUnlessFreshAsync(cancellation);
        if (await OpenAsync(cancellation) is { } already)
            throw new Refusal("This browser is the shared tablet {0} already.", already);
        await using var db = databases.Open();
        var token = tablets.RegisterBrowser(current.Person.PracticeId);
        db.Tablets.Add(new Tablet(Guid.CreateVersion7(), input.Name.Trim(), input.LockAfterMinutes, token, clock.GetCurrentInstant()));
        await db.SaveChangesAsync(cancellation);
        await accounts.SignOutAsync();
    }

    public sealed record Input
    {
        public string Name { get; set; } = "";
        public int LockAfterMinutes { get; set; } = MakeTabletRules.UsualMinutes;
    }
}
