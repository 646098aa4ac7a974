using HairClinic.Domain.Practices;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using HairClinic.Web.Data.Books;
using HairClinic.Web.Data.Writes;
using HairClinic.Web.Practices;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Features.Visits.UndoLog;

/// <summary>Takes a wrong log back on the same day: the visit is in the chair again and the old bond on the head.</summary>
public sealed class UndoLog(WriteOnce writes, CurrentActor current, IClock clock)
{
    /// <exception cref="Refusal">Not logged, another day or person, something was built on it since, or the client is elsewhere.</exception>
    /// <exception cref="OvertakenException">Somebody changed the visit or a bond at the same moment.</exception>
    public async Task<Outcome> SaveAsync(Guid key, Input input, CancellationToken cancellation)
    {
        try
        {
            return await writes.RunAsync(key, nameof(UndoLog), input, db => WriteAsync(db, input, cancellation), cancellation);
        }
        catch (DbUpdateException e) when (SlotClashes.In(e) is SlotClash.Client)
        {
            throw new Refusal("This client was given another visit at that time since. Call that one off first.");
        }
    }

    private async Task<Outcome> WriteAsync(ClinicDb db, Input input, CancellationToken cancellation)
    {
        var salons = current.Person.Salons;
        var found =
            await (
                from visit in db.Visits
                where visit.Id == input.VisitId && salons.Contains(visit.SalonId)
                select new
                {
                    Visit = visit,
                    visit.Record,
                    Salon = db.Salons.First(s => s.Id == visit.SalonId),
                    Made = db.Bonds.FirstOrDefault(b => b.VisitId == visit.Id),
                    Bonds = db.Bonds.Where(b => b.ClientId == visit.ClientId).OrderByDescending(b => b.AppliedOn).ToList(),
                    Units = db.HairSystems.Where(u => u.ClientId == visit.ClientId).ToList(),
                }
            ).SingleOrDefaultAsync(cancellation) ?? throw new Refusal("This visit is not in the book of your salons.");

        var units = found.Units.ToDictionary(u => u.Id);
        var made = found.Made;
        // A log that made a bond took off the one removed that day; any other left the open one on.
        var before = made is null
            ? found.Bonds.FirstOrDefault(b => b.IsOpen)
            : found.Bonds.FirstOrDefault(b =>
                b.Id != made.Id && b.RemovedOn == made.AppliedOn && b.HairSystemId == found.Record?.RemovedUnitId
            );
        var madeWasFirst = made is not null && !found.Bonds.Any(b => b.Id != made.Id && b.HairSystemId == made.HairSystemId);
        var record = found.Visit.UndoRecord(
            made is null ? null : (made, units[made.HairSystemId]),
            madeWasFirst,
            before is null ? null : (before, units[before.HairSystemId]),
            found.Salon,
            clock.GetCurrentInstant(),
            current.Actor.Id,
            current.Person.StaffRole is StaffRole.Owner or StaffRole.Manager
        );
        db.VisitRecords.Remove(record);
        if (made is not null)
            db.Bonds.Remove(made);
        return new Outcome(found.Visit.Id, found.Visit.State);
    }

    public sealed record Input(Guid VisitId);

    public sealed record Outcome(Guid VisitId, VisitState State);
}
