using HairClinic.Domain.Wear.Watch;
using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>Looks each night whether a workshop, an adhesive or a lot of it has got worse: charts are brought up to date, alarms raised and closed.</summary>
/// <remarks>The newest fit that has an estimate says what is usual; without one nothing is watched.</remarks>
public sealed class StreamWatcher
{
    private readonly ClinicDb _db;
    private readonly LocalDate _today;
    private readonly List<WatchAlarm> _alarms;
    private readonly Dictionary<WatchedStream, StoredWatch> _charts;
    private readonly HashSet<WatchedStream> _seen = [];

    private StreamWatcher(ClinicDb db, LocalDate today, List<WatchAlarm> alarms, List<StoredWatch> charts) =>
        (_db, _today, _alarms, _charts) = (db, today, alarms, charts.ToDictionary(c => c.Stream));

    /// <summary>Six round trips, one of them the save.</summary>
    public static async Task WatchAsync(
        ClinicDb db,
        IReadOnlyCollection<HoldSpell> holds,
        IReadOnlyCollection<LifeSpell> lives,
        LocalDate today,
        CancellationToken cancellation
    )
    {
        var watcher = new StreamWatcher(
            db,
            today,
            await db.WatchAlarms.ToListAsync(cancellation),
            await db.StoredWatches.ToListAsync(cancellation)
        );
        var units = await WatchedUnit.LoadAsync(db, cancellation);
        watcher.CloseUsedUp(units, holds, await watcher.OpenBondsAsync(cancellation));
        if (await WearModelPair.UsableFits(db, LifetimeKind.Life).FirstOrDefaultAsync(cancellation) is { } life)
            watcher.Watch(
                life,
                lives,
                l => units.GetValueOrDefault(l.UnitId)?.ArrivedOn,
                l => StreamOf(WatchedStreamKind.Workshop, l.WorkshopId)
            );
        if (await WearModelPair.UsableFits(db, LifetimeKind.Hold).FirstOrDefaultAsync(cancellation) is { } hold)
        {
            watcher.Watch(
                hold,
                holds,
                h => h.AppliedOn,
                h => StreamOf(WatchedStreamKind.Adhesive, h.AdhesiveId),
                h => StreamOf(WatchedStreamKind.Lot, h.LotId)
            );
        }
        db.StoredWatches.RemoveRange(watcher._charts.Where(c => !watcher._seen.Contains(c.Key)).Select(c => c.Value));
        await db.SaveChangesAsync(cancellation);
    }

    private static WatchedStream? StreamOf(WatchedStreamKind kind, Guid? id) => id is { } known ? new(kind, known) : null;

    /// <param name="deliveredOn">Null for what has come to nobody yet.</param>
    /// <param name="streamsOf">A spell is in one stream of each.</param>
    private void Watch<T>(
        StoredFit fit,
        IReadOnlyCollection<T> all,
        Func<T, LocalDate?> deliveredOn,
        params ReadOnlySpan<Func<T, WatchedStream?>> streamsOf
    )
        where T : WearSpell
    {
        var usable = all.Where(s => s.Window is not null)
            .Select(s => (Spell: s, On: deliveredOn(s)))
            .Where(s => s.On <= _today)
            .Select(s => (s.Spell, On: s.On!.Value))
            .ToList();
        var oneIn = WatchSample.OneIn(usable.Count(s => IsRecent(s.On)));
        var watched = usable.Where(s => s.Spell.ClientId is not { } client || WatchSample.Keeps(client, oneIn)).ToList();
        var limit = StreamWatch.LimitFor(streamsOf.Length * watched.Count(s => IsRecent(s.On)));
        var rows = new WatchedRows<T>(fit, [.. watched.Select(w => w.Spell)]);
        foreach (var streamOf in streamsOf)
        {
            var ordered = watched
                .Select(s => (s.Spell, s.On, Stream: streamOf(s.Spell)))
                .Where(s => s.Stream is not null)
                .OrderBy(s => s.On)
                .ToLookup(s => s.Stream!.Value);
            foreach (var stream in ordered.Where(s => s.Any(unit => IsRecent(unit.On))))
                Watch(stream.Key, [.. stream.Select(s => s.On)], from => rows.Increments([.. stream.Select(s => s.Spell)], from), limit);
        }
    }

    private void Watch(WatchedStream stream, LocalDate[] deliveries, Func<int, double[]> increments, double limit)
    {
        _seen.Add(stream);
        var own = _alarms.Where(a => a.Stream == stream).ToList();
        if (WatchAlarmRule.MayBeginFrom(own, _today) is not { } from)
            return;
        var first = WatchAlarmRule.FirstPlace(deliveries, from);
        var added = increments(first);
        if (!_charts.TryGetValue(stream, out var chart))
        {
            _charts[stream] = chart = new StoredWatch(Guid.CreateVersion7(), stream);
            _db.StoredWatches.Add(chart);
        }
        chart.Record(_today, deliveries[first..], StreamWatch.Evaluate(added[first..]), limit);
        if (WatchAlarmRule.Raise(Guid.CreateVersion7(), stream, deliveries, added, from, limit, _today) is { } alarm)
            _db.WatchAlarms.Add(alarm);
    }

    // Asked only where an alarm names bonds.
    private async Task<HashSet<Guid>> OpenBondsAsync(CancellationToken cancellation) =>
        _alarms.Exists(a => a.IsOpen && a.Kind != WatchedStreamKind.Workshop)
            ? [.. await _db.Bonds.Where(b => b.RemovedOn == null).Select(b => b.Id).ToListAsync(cancellation)]
            : [];

    private void CloseUsedUp(Dictionary<Guid, WatchedUnit> units, IReadOnlyCollection<HoldSpell> holds, HashSet<Guid> openBonds)
    {
        foreach (var alarm in _alarms.Where(a => a.IsOpen))
        {
            var left =
                alarm.Kind == WatchedStreamKind.Workshop
                    ? units.Values.Count(u => u.WorkshopId == alarm.StreamId && u.IsLeft && (u.ArrivedOn is not { } on || alarm.Names(on)))
                    : holds.Count(h =>
                        (alarm.Kind == WatchedStreamKind.Lot ? h.LotId : h.AdhesiveId) == alarm.StreamId
                        && openBonds.Contains(h.BondId)
                        && alarm.Names(h.AppliedOn)
                    );
            alarm.CloseIfUsedUp(left, _today);
        }
    }

    private bool IsRecent(LocalDate on) => on >= _today.PlusDays(-StreamWatch.WatchedDays);
}

/// <summary>What the watch asks of a unit beside its life.</summary>
/// <param name="ArrivedOn">Or first known; null while it is on its way.</param>
/// <param name="IsLeft">It is worn, waits or is on its way.</param>
internal sealed record WatchedUnit(Guid? WorkshopId, LocalDate? ArrivedOn, bool IsLeft)
{
    public static async Task<Dictionary<Guid, WatchedUnit>> LoadAsync(ClinicDb db, CancellationToken cancellation)
    {
        var units =
            from unit in db.HairSystems
            join kind in db.UnitKinds on unit.UnitKindId equals kind.Id
            select new
            {
                unit.Id,
                kind.WorkshopId,
                unit.Dates.ArrivedOn,
                First = db.Bonds.Where(b => b.HairSystemId == unit.Id).Min(b => (LocalDate?)b.AppliedOn),
                unit.State,
            };
        return (await units.ToListAsync(cancellation)).ToDictionary(
            u => u.Id,
            u => new WatchedUnit(u.WorkshopId, u.ArrivedOn ?? u.First, !u.State.IsGone() && u.State != UnitState.Specified)
        );
    }
}

/// <summary>Spells as the watch of a stream reads them: with their clients' other spells, in the columns of a fit.</summary>
internal sealed class WatchedRows<T>(StoredFit fit, IReadOnlyCollection<T> all)
    where T : WearSpell
{
    private readonly WatchedFit _fit = WatchedFit.From(fit);
    private readonly Dictionary<string, int> _columns = fit.Columns.Select((name, i) => (name, i)).ToDictionary(c => c.name, c => c.i);
    private readonly ILookup<Guid?, T> _byClient = all.ToLookup(s => s.ClientId);

    /// <param name="stream">In the order of its deliveries.</param>
    /// <param name="from">The first place at which it may have got worse.</param>
    public double[] Increments(IReadOnlyList<T> stream, int from)
    {
        var places = new Dictionary<T, int>(ReferenceEqualityComparer.Instance);
        var clients = new Dictionary<Guid, int>();
        for (var place = 0; place < stream.Count; place++)
        {
            places[stream[place]] = place;
            if (place >= from && stream[place].ClientId is { } client)
                clients.TryAdd(client, clients.Count);
        }
        var rows = clients
            .SelectMany(c => _byClient[c.Key].Select(s => RowOf(s, c.Value, places.GetValueOrDefault(s, -1))))
            .Concat(stream.Skip(from).Where(s => s.ClientId is null).Select(s => RowOf(s, -1, places[s])));
        return ShiftScan.Increments(_fit, rows, stream.Count, from);
    }

    private WatchedRow RowOf(T spell, int client, int place)
    {
        var values = new double[_columns.Count];
        foreach (var column in spell.Columns)
        {
            if (_columns.TryGetValue(column.Name, out var at))
                values[at] += column.Value;
        }
        return new WatchedRow(client, place, spell.SpellAt(fit.RepairRate), spell.Window!.Value.Place, values);
    }
}
