using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Visits;
using HairClinic.Web.Data;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace HairClinic.Web.Demo;

/// <summary>Writes down what an old binder has no columns for: what was seen at each take-down, and which units went back to be made again.</summary>
public sealed class DemoInspections(ClinicDb db)
{
    public async Task WriteAsync(DemoHistory history, CancellationToken cancellation)
    {
        var zones = DemoPractice.Salons.ToDictionary(s => s.Name, s => DateTimeZoneProviders.Tzdb[s.Zone]);
        var codes = await db.Clients.ToDictionaryAsync(c => c.Id, c => c.Code, cancellation);
        var visits = (await db.Visits.Where(v => v.State == VisitState.Done).ToListAsync(cancellation)).ToDictionary(v =>
            (codes[v.ClientId], v.StartsAt)
        );
        var units = await db.HairSystems.Include(u => u.Promises).AsSplitQuery().ToDictionaryAsync(u => u.Serial, cancellation);
        foreach (var takeDown in history.Lives.SelectMany(l => l.TakeDowns))
        {
            var (told, row) = (takeDown.Visit, takeDown.Removed);
            var starts = (told.Day!.Value + told.Start!.Value).InZoneLeniently(zones[told.Salon!]).ToInstant();
            var visit = visits[(told.ClientCode, starts)];
            var found = new TakeDown(takeDown.Grades, row.Lift is not null, row.LiftedOn, row.LiftZone, row.RemovedBecause!.Value);
            visit.RestoreRecord(Guid.CreateVersion7(), units[row.Serial].Id, found, takeDown.WaitsKept, visit.EndsAt, visit.PersonId);
        }
        foreach (var unit in history.Lives.SelectMany(l => l.Units))
        {
            if (unit.SentBackOn(history.Today) is { } day)
                units[unit.Serial].SendBackForRemake(Guid.CreateVersion7(), day, day.PlusDays(Truth.DemoTruth.PromisedDays));
        }
        await db.SaveChangesAsync(cancellation);
    }
}
