using HairClinic.Web.Fence;

namespace HairClinic.Web.Data.Books;

/// <summary>What is asked of clients everywhere. The fence decides whose are visible; this only leaves out records that were merged or erased.</summary>
public static class ClientQueryExtensions
{
    /// <summary>One client to open and change: a record folded into another is its keeper's.</summary>
    public static IQueryable<Client> UnmergedById(this IQueryable<Client> clients, Guid clientId) =>
        clients.Where(c => c.Id == clientId && c.MergedIntoId == null);

    /// <summary>What stands above every page about a client, and the zone in which its days are.</summary>
    public static IQueryable<ClientHeading> Headings(this IQueryable<Client> clients, ClinicDb db) =>
        clients.Join(db.Salons, c => c.HomeSalonId, s => s.Id, (c, s) => new ClientHeading(c.Name, c.Code, s.Zone));

    /// <summary>The zone in which the days of one client to change are.</summary>
    /// <exception cref="Refusal">The client is not there any more.</exception>
    public static async Task<string> RequireZoneAsync(this ClinicDb db, Guid clientId, CancellationToken cancellation) =>
        (await db.Clients.UnmergedById(clientId).Headings(db).SingleOrDefaultAsync(cancellation))?.Zone
        ?? throw new Refusal("This client is not there any more. They may have been merged with another record.");

    /// <summary>Those whose home salon is one of the person's: see <see cref="StaffPermissions.MayManageClient"/>.</summary>
    public static IQueryable<Client> AtHomeInSalonsOf(this IQueryable<Client> clients, PersonActor person)
    {
        var (everywhere, salons) = (person.StaffRole == StaffRole.Owner, person.Salons);
        return clients.Where(c => everywhere || salons.Contains(c.HomeSalonId));
    }
}

public sealed record ClientHeading(string Name, string Code, string Zone);
