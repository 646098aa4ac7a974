using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Settings;

/// <summary>Who works in the practice, where, and whether they can sign in.</summary>
public sealed class People(ClinicDbFactory databases)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        var rows = await db
            .People.AsNoTracking()
            .OrderBy(p => p.Left)
            .ThenBy(p => p.Name)
            .Select(p => new Row(
                p.Id,
                p.Name,
                p.Role,
                p.Left,
                db.Salons.Where(s => p.Salons.Any(x => x.SalonId == s.Id)).OrderBy(s => s.Name).Select(s => s.Name).ToList(),
                db.PersonSkills.Count(s => s.PersonId == p.Id),
                db.Users.Where(u => u.PracticeId == p.PracticeId && u.PersonId == p.Id).Select(u => u.UserName).FirstOrDefault()
            ))
            .ToListAsync(cancellation);
        return new Screen(rows);
    }

    public sealed record Screen(IReadOnlyList<Row> Rows);

    /// <param name="Account">The name they sign in with; null when they cannot.</param>
    public sealed record Row(Guid Id, string Name, StaffRole Role, bool Left, IReadOnlyList<string> Salons, int Skills, string? Account);
}
