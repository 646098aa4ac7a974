using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Settings;

/// <summary>Where the first-run guide stands.</summary>
public sealed class SetupProgressReader(ClinicDbFactory databases)
{
    public async Task<SetupProgress> ReadAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        return await db
            .PracticeSettings.Select(s => new SetupProgress(
                s.GuideFinishedAt != null,
                db.Salons.Where(x => !x.Retired).OrderBy(x => x.Id).Select(x => (Guid?)x.Id).FirstOrDefault(),
                db.Chairs.Count(),
                db.People.Count(),
                db.ServiceKinds.Count()
            ))
            .SingleAsync(cancellation);
    }
}
