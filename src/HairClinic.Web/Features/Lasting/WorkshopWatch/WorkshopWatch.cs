using HairClinic.Domain.Wear.Watch;
using HairClinic.Web.Data;
using HairClinic.Web.Fence;

namespace HairClinic.Web.Features.Lasting;

/// <summary>How each workshop, adhesive and lot stood when it was last watched, what was found, and whom it concerns.</summary>
public sealed class WorkshopWatch(ClinicDbFactory databases, CurrentActor current, IClock clock)
{
    public async Task<Screen> OpenAsync(CancellationToken cancellation)
    {
        await using var db = databases.Open();
        await db.Database.OpenConnectionAsync(cancellation);
        var names = new Dictionary<Guid, string>();
        foreach (var side in new[] { LastingSide.Workshop, LastingSide.Adhesive, LastingSide.Lot })
        {
            foreach (var (id, name) in await LastingNames.LoadAsync(db, side, cancellation))
                names[id] = name;
        }
        var people = await db.People.Select(p => new { p.Id, p.Name }).ToDictionaryAsync(p => p.Id, p => p.Name, cancellation);
        var alarms = await db.WatchAlarms.AsNoTracking().OrderByDescending(a => a.RaisedOn).ThenBy(a => a.Id).ToListAsync(cancellation);
        var rows = new List<AlarmRow>();
        foreach (var alarm in alarms)
        {
            rows.Add(
                new AlarmRow(
                    alarm,
                    names.GetValueOrDefault(alarm.StreamId, "?"),
                    alarm.ClosedBy is { } by ? people.GetValueOrDefault(by) : null,
                    alarm.IsOpen ? await WatchedClients.LoadAsync(db, alarm, cancellation) : []
                )
            );
        }
        var watches = await db.StoredWatches.AsNoTracking().ToListAsync(cancellation);
        return new Screen(
            clock.Today(await ReaderZone.ReadAsync(db, current.Person, cancellation)),
            [.. rows.Where(r => r.Alarm.IsOpen)],
            [.. rows.Where(r => !r.Alarm.IsOpen)],
            [
                .. watches
                    .Select(w => new WatchRow(w, names.GetValueOrDefault(w.StreamId, "?")))
                    .OrderBy(w => w.Watch.Kind)
                    .ThenByDescending(w => w.Watch.Statistic)
                    .ThenBy(w => w.Name, StringComparer.Ordinal),
            ]
        );
    }

    /// <param name="Open">The newest first.</param>
    /// <param name="Watches">By kind, what stands highest first.</param>
    public sealed record Screen(
        LocalDate Today,
        IReadOnlyList<AlarmRow> Open,
        IReadOnlyList<AlarmRow> Closed,
        IReadOnlyList<WatchRow> Watches
    );

    /// <param name="Clients">Of those the reader may see, whoever has the most to fear first.</param>
    public sealed record AlarmRow(WatchAlarm Alarm, string Name, string? ClosedBy, IReadOnlyList<WatchedClient> Clients);

    public sealed record WatchRow(StoredWatch Watch, string Name);
}

/// <summary>A client who wears or waits for what an alarm names.</summary>
/// <param name="Unit">The unit's serial.</param>
/// <param name="On">It was delivered on; of an adhesive, bonded on.</param>
/// <param name="IsWorn">It is on the head.</param>
/// <param name="AtRisk">As last calculated: the chance of a gap is beyond what the practice accepts.</param>
public sealed record WatchedClient(Guid ClientId, string Name, string Code, string Unit, LocalDate? On, bool IsWorn, bool AtRisk);
