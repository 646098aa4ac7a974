using HairClinic.Web.Data;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Settings;

/// <summary>The salons a person may look into: all of them for an owner, their own for a manager.</summary>
public sealed class Salons(ClinicDbFactory databases, CurrentActor current, IClock clock)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var owner = current.Person.StaffRole == StaffRole.Owner;
        var own = current.Person.Salons;
        var rows = await db
            .Salons.AsNoTracking()
            .Where(s => owner || own.Contains(s.Id))
            .OrderBy(s => s.Retired)
            .ThenBy(s => s.Name)
            .Select(s => new Row(
                s.Id,
                s.Name,
                s.Zone,
                s.Retired,
                db.Chairs.Count(c => c.SalonId == s.Id && !c.Retired),
                s.Hours.Select(h => h.Day).Distinct().Count()
            ))
            .ToListAsync(cancellation);
        return new Screen(rows, clock.GetCurrentInstant());
    }

    public sealed record Screen(IReadOnlyList<Row> Rows, Instant Now);

    public sealed record Row(Guid Id, string Name, string Zone, bool Retired, int Chairs, int OpenDays);
}
