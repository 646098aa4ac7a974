using HairClinic.Web.Data;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Units;

/// <summary>The salon whose day it is for a unit: where it lies, else its client's own, else that of whoever looks.</summary>
internal static class UnitSalon
{
    public static async Task<Salon> LoadAsync(
        ClinicDb db,
        Guid? placeSalonId,
        Guid? clientId,
        PersonActor person,
        CancellationToken cancellation
    )
    {
        var at =
            placeSalonId
            ?? (
                clientId is null
                    ? null
                    : await db.Clients.Where(c => c.Id == clientId).Select(c => (Guid?)c.HomeSalonId).SingleOrDefaultAsync(cancellation)
            )
            ?? person.AtSalon
            ?? person.Salons[0];
        return await db.Salons.AsNoTracking().SingleAsync(s => s.Id == at, cancellation);
    }

    /// <summary>The wanted salon where it can be chosen, else the first that can.</summary>
    public static Guid? Prefer(IReadOnlyList<SalonChoice> salons, Guid? wanted) =>
        salons.Any(s => s.Id == wanted) ? wanted
        : salons.Count > 0 ? salons[0].Id
        : null;

    /// <summary>Salons in which whoever asks may put a unit.</summary>
    public static async Task<IReadOnlyList<SalonChoice>> ChoicesAsync(ClinicDb db, PersonActor person, CancellationToken cancellation)
    {
        var own = person.Salons;
        return await db
            .Salons.Where(s => own.Contains(s.Id) && !s.Retired)
            .OrderBy(s => s.Name)
            .Select(s => new SalonChoice(s.Id, s.Name, s.Currency))
            .ToListAsync(cancellation);
    }
}

public sealed record SalonChoice(Guid Id, string Name, string Currency);
