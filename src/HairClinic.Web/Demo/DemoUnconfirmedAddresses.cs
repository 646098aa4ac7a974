using HairClinic.Web.Data;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Demo;

/// <summary>Three addresses that the invented desk entered and nobody confirmed yet: a first one, another one, and somebody's who looks after a client.</summary>
public static class DemoUnconfirmedAddresses
{
    public static async Task EnterAsync(PracticeJobRunner jobs, ClinicDb book, CancellationToken cancellation)
    {
        var desk = await book
            .People.Include(p => p.Salons)
            .FirstAsync(p => p.Role == StaffRole.FrontDesk && p.Name == DeskName, cancellation);
        List<Guid> salons = [.. desk.Salons.Select(s => s.SalonId)];
        await jobs.RunAsAsync(
            new PersonActor(book.PracticeId, desk.Id, desk.Role, salons, salons[0]),
            async services =>
            {
                await using var db = services.GetRequiredService<ClinicDbFactory>().Open();
                var clients = await db
                    .Clients.Where(c => c.Code == "T-01" || c.Code == "T-02" || c.Code == "T-05")
                    .ToDictionaryAsync(c => c.Code, cancellation);
                await ReachAsync(db, clients["T-01"], "marguerite@example.org", cancellation);
                await ReachAsync(db, clients["T-05"], "jemima.corrigall@example.org", cancellation);
                db.Guardians.Add(
                    new Guardian(Guid.CreateVersion7(), clients["T-02"].Id, "Ambrose Brackenridge", "ambrose@example.org", endsOn: null)
                );
                return await db.SaveChangesAsync(cancellation);
            }
        );
    }

    private static string DeskName => DemoPractice.People.First(p => p.Role == StaffRole.FrontDesk).Name;

    private static async Task ReachAsync(ClinicDb db, Client client, string email, CancellationToken cancellation)
    {
        db.FindWords.RemoveRange(
            await db.FindWords.Where(w => w.SubjectId == client.Id && w.Kind == FindWordKind.ClientEmail).ToListAsync(cancellation)
        );
        client.SetContact(client.Phone, email);
        db.FindWords.AddRange(FindWordIndexer.For(client).Where(w => w.Kind == FindWordKind.ClientEmail));
    }
}
