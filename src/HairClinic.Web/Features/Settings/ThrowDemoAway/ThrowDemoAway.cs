using HairClinic.Web.Data;
using HairClinic.Web.Data.Photos;
using HairClinic.Web.Fence;
using HairClinic.Web.Privacy;

namespace HairClinic.Web.Features.Settings;

/// <summary>Throws the invented practice away in one act, so that the real one can begin.</summary>
public sealed class ThrowDemoAway(
    ClinicDbFactory databases,
    CurrentActor current,
    SetupCode code,
    PracticePresence presence,
    SealedFiles files
)
{
    /// <returns>The practice's name; null where it is not the invented one.</returns>
    public async Task<Screen?> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await db
            .PracticeSettings.Where(s => s.IsDemo)
            .Select(s => new Screen(s.Name, db.Clients.Count(), db.Visits.Count()))
            .SingleOrDefaultAsync(cancellation);
    }

    /// <remarks>Its key could not outlive it, so there is none: a second time finds nothing to throw away.</remarks>
    /// <exception cref="Refusal">It is not the invented practice, not an owner asks, or the name differs.</exception>
    public async Task<Outcome> SaveAsync(Input input, CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var settings = await db.PracticeSettings.AsNoTracking().SingleOrDefaultAsync(cancellation);
        if (settings is not { IsDemo: true } || current.Person.StaffRole != StaffRole.Owner)
            throw new Refusal("Only the invented practice can be thrown away, and only by its owner.");
        if (!string.Equals(input.Name.Trim(), settings.Name, StringComparison.OrdinalIgnoreCase))
            throw new Refusal("That is not the practice's name. Nothing was thrown away.");
        await using var whole = databases.OpenPracticeWide(nameof(ThrowDemoAway));
        var rows = await PracticeEraser.EraseAsync(whole, cancellation);
        files.DeleteOfPractice(settings.PracticeId);
        presence.Forget();
        return new Outcome(rows, code.Renew());
    }

    public sealed record Screen(string Name, int Clients, int Visits);

    public sealed record Input
    {
        public string Name { get; set; } = "";
    }

    /// <param name="SetupCode">Opens the first-run guide to whoever threw the demo away.</param>
    public sealed record Outcome(int Rows, string SetupCode);
}
