using HairClinic.Domain.Clients;
using HairClinic.Web.Practices;

namespace HairClinic.Web.Data.Books;

/// <summary>
/// Whose client somebody is: those whose home salon one works in, and those who have a visit in one of
/// one's salons. All others are not found.
/// </summary>
public static class ClientsSeen
{
    /// <summary>The clients a person may open, folded records included.</summary>
    public static IQueryable<Client> SeenBy(this IQueryable<Client> clients, ClinicDb db, PersonActor person)
    {
        var salons = person.Salons;
        return clients.Where(c => salons.Contains(c.HomeSalonId) || db.Visits.Any(v => v.ClientId == c.Id && salons.Contains(v.SalonId)));
    }

    /// <summary>One client a person may open and change: a folded record is its keeper's.</summary>
    public static IQueryable<Client> SeenBy(this IQueryable<Client> clients, ClinicDb db, PersonActor person, Guid clientId) =>
        clients.Where(c => c.Id == clientId && c.MergedIntoId == null).SeenBy(db, person);
}
