using HairClinic.Domain.Bonding;
using HairClinic.Domain.Visits;
using HairClinic.Domain.Wear;
using HairClinic.Web.Practices;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Features.MyHair.MyHair;

/// <summary>What a client sees of their own hair: when they are next due and why, when they come, and what may be done today.</summary>
public sealed class MyHair(ClinicDbFactory databases, CurrentActor current, IClock clock)
{
    /// <summary>Whose page it is comes from the sign-in, never from the address.</summary>
    /// <returns>Null when the client is no longer there.</returns>
    public async Task<Screen?> OpenAsync(CancellationToken cancellation)
    {
        var clientId = current.Client.ClientId;
        var now = clock.GetCurrentInstant();
        await using var db = databases.Open();
        var facts = await db
            .Clients.AsNoTracking()
            // A record found to be a duplicate leads to the one that was kept.
            .Where(c => c.Id == db.Clients.Where(own => own.Id == clientId).Select(own => own.MergedIntoId ?? own.Id).First())
            .Select(c => new
            {
                Name = c.CalledAs ?? c.Name,
                Salon = db.Salons.First(s => s.Id == c.HomeSalonId),
                CureHours = db.PracticeSettings.Select(s => s.CureHours).First(),
                Bond = db.Bonds.FirstOrDefault(b => b.ClientId == c.Id && b.RemovedOn == null),
                LabelCureHours = (
                    from bond in db.Bonds
                    from used in bond.Products
                    join product in db.Products on used.ProductId equals product.Id
                    where bond.ClientId == c.Id && bond.RemovedOn == null
                    select product.LabelCureHours
                ).Max(),
                Visit = (
                    from visit in db.Visits
                    join service in db.ServiceKinds on visit.ServiceKindId equals service.Id
                    join place in db.Salons on visit.SalonId equals place.Id
                    where
                        visit.ClientId == c.Id
                        && visit.EndsAt > now
                        && (visit.State == VisitState.Booked || visit.State == VisitState.Arrived)
                    orderby visit.StartsAt
                    select new
                    {
                        visit.StartsAt,
                        place.Zone,
                        Place = place.Name,
                    }
                ).FirstOrDefault(),
            })
            .SingleOrDefaultAsync(cancellation);
        if (facts is null)
            return null;

        var today = facts.Salon.DayOf(now);
        var booked = facts.Visit is null
            ? null
            : new Booked(facts.Visit.StartsAt.InZone(DateTimeZoneProviders.Tzdb[facts.Visit.Zone]).LocalDateTime, facts.Visit.Place);
        return new Screen(
            facts.Name,
            today,
            now,
            Own(facts.Bond, facts.CureHours, facts.LabelCureHours, today, now),
            booked,
            facts.Salon.Name,
            facts.Salon.Phone
        );
    }

    private static OwnBond? Own(Bond? bond, int cureHours, int? labelHours, LocalDate today, Instant now)
    {
        if (bond is null)
            return null;
        var cure = DueBasis.CureOf(cureHours, labelHours);
        var state = new BondDates(bond.OpensOn, bond.ClosesOn)
        {
            AppliedAt = bond.AppliedAt,
            Cure = cure,
            LiftedOn = bond.Lift is { } lift ? lift.LiftedOn ?? lift.ReportedOn : null,
        }.StateOn(today, now);
        var curedAt = bond.AppliedAt is { } applied ? cure.EndsAt(applied) : (Instant?)null;
        return new OwnBond(state, bond.AppliedOn, bond.OpensOn, bond.DueOn, bond.ClosesOn, bond.DueReasons, curedAt);
    }

    public sealed record Screen(string Name, LocalDate Today, Instant Now, OwnBond? Bond, Booked? Visit, string Salon, string? SalonPhone);

    /// <param name="CuredAt">Null where only the day of the bond is known.</param>
    public sealed record OwnBond(
        BondState State,
        LocalDate AppliedOn,
        LocalDate OpensOn,
        LocalDate DueOn,
        LocalDate ClosesOn,
        IReadOnlyList<DueReason> Reasons,
        Instant? CuredAt
    );

    /// <param name="At">On the salon's own clock.</param>
    public sealed record Booked(LocalDateTime At, string Salon);
}
