using HairClinic.Domain.Chairs;
using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Practices;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Features.Visits.VisitDetails;

/// <summary>One visit: what, when, who, where it stands, and what can be done about it.</summary>
public sealed class VisitDetails(ClinicDbFactory databases, CurrentActor current, IClock clock)
{
    /// <returns>Nothing when there is no such visit in the person's salons.</returns>
    public async Task<Screen?> OpenAsync(Guid visitId, CancellationToken cancellation)
    {
        var (role, now) = (current.Person.StaffRole, clock.GetCurrentInstant());
        await using var db = databases.Open();
        return await db
            .Visits.Where(v => v.Id == visitId && current.Person.Salons.Contains(v.SalonId))
            .Select(v => new Screen(
                v.Id,
                v.Version,
                v.State,
                v.ClientId,
                db.Clients.First(c => c.Id == v.ClientId).Name,
                db.Clients.First(c => c.Id == v.ClientId).CalledAs,
                db.ServiceKinds.First(k => k.Id == v.ServiceKindId).Name,
                db.ServiceKinds.First(k => k.Id == v.ServiceKindId).Purpose,
                db.Salons.First(s => s.Id == v.SalonId).Name,
                db.Salons.First(s => s.Id == v.SalonId).Zone,
                v.Day,
                v.StartsAt,
                v.EndsAt,
                db.Chairs.Where(c => c.Id == v.ChairId).Select(c => c.Name).FirstOrDefault(),
                db.People.Where(p => p.Id == v.PersonId).Select(p => p.Name).FirstOrDefault(),
                v.Note,
                db.VisitRecords.Where(r => r.VisitId == v.Id).Select(r => r.Note).FirstOrDefault(),
                v.Segments.OrderBy(s => s.Position).Select(s => new StepView(s.Kind, s.StartsAt, s.EndsAt)).ToList()
            )
            {
                MayBook = role == StaffRole.Owner || role == StaffRole.Manager || role == StaffRole.FrontDesk,
                Now = now,
                StandsAside =
                    !v.HoldsClient && (v.State == VisitState.Booked || v.State == VisitState.Arrived || v.State == VisitState.InChair),
                MayLog = role == StaffRole.Owner || role == StaffRole.Stylist || role == StaffRole.Trainee,
            })
            .SingleOrDefaultAsync(cancellation);
    }

    public sealed record Screen(
        Guid VisitId,
        uint Version,
        VisitState State,
        Guid ClientId,
        string Client,
        string? CalledAs,
        string Service,
        ServicePurpose Purpose,
        string Salon,
        string Zone,
        LocalDate Day,
        Instant StartsAt,
        Instant EndsAt,
        string? Chair,
        string? Person,
        string? Note,
        string? RecordNote,
        IReadOnlyList<StepView> Steps
    )
    {
        public bool MayBook { get; init; }

        public Instant Now { get; init; }

        /// <summary>The client has another visit at the same time, from two records that were merged.</summary>
        public bool StandsAside { get; init; }

        public LocalDate Today => Now.InZone(DateTimeZoneProviders.Tzdb[Zone]).Date;

        public bool DayHasCome => Day <= Today;

        public bool MayLog { get; init; }

        public bool IsOpen => State is VisitState.Booked or VisitState.Arrived;

        public bool CanBeLogged => DayHasCome && State.IsLive();
    }

    public sealed record StepView(SegmentKind Kind, Instant StartsAt, Instant EndsAt);
}
