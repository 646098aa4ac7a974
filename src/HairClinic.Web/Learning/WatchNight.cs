using System.Diagnostics.CodeAnalysis;
using HairClinic.Domain.Wear.Watch;

namespace HairClinic.Web.Learning;

/// <summary>One night's watch of a practice's streams: alarms that are used up are closed, charts brought up to date, alarms raised.</summary>
/// <remarks>What is to be stored of it is handed out: it asks no database.</remarks>
/// <param name="alarms">All there are.</param>
/// <param name="charts">As the last night left them.</param>
public sealed class WatchNight(LocalDate today, IEnumerable<WatchAlarm> alarms, IEnumerable<StoredWatch> charts)
{
    private readonly LocalDate _today = today;
    private readonly List<WatchAlarm> _alarms = [.. alarms];
    private readonly Dictionary<WatchedStream, StoredWatch> _charts = charts.ToDictionary(c => c.Stream);
    private readonly HashSet<WatchedStream> _seen = [];
    private readonly List<WatchAlarm> _raised = [];
    private readonly List<StoredWatch> _begun = [];

    /// <summary>Alarms of tonight.</summary>
    public IReadOnlyList<WatchAlarm> Raised => _raised;

    /// <summary>Charts of streams that had none.</summary>
    public IReadOnlyList<StoredWatch> Begun => _begun;

    /// <summary>Charts of streams that are not watched any more; to be asked once all were watched.</summary>
    public IEnumerable<StoredWatch> Over => _charts.Where(c => !_seen.Contains(c.Key)).Select(c => c.Value);

    /// <param name="left">How many of an alarm's units or bonds are in use, wait or are on their way.</param>
    public void CloseUsedUp(Func<WatchAlarm, int> left)
    {
        foreach (var alarm in _alarms.Where(a => a.IsOpen))
            alarm.CloseIfUsedUp(left(alarm), _today);
    }

    /// <param name="fit">Of these very lives, as of tonight: it says what is usual. With an older one charts stay as they are.</param>
    /// <param name="factors">The practice's factor rows of lives.</param>
    /// <param name="deliveredOn">Null for what has not come.</param>
    public void WatchUnits(
        StoredFit? fit,
        IReadOnlyCollection<LifeSpell> lives,
        IReadOnlyDictionary<KnownCovariate, double> factors,
        Func<LifeSpell, LocalDate?> deliveredOn
    )
    {
        if (IsOfTonight(fit) && WearModelFitter.FitLivesForWatch(fit, lives, factors) is { Missing: null } usual)
            Watch(fit, WatchedFit.From(usual), lives, deliveredOn, l => StreamOf(WatchedStreamKind.Workshop, l.WorkshopId));
        else
            Keep(kind => kind == WatchedStreamKind.Workshop);
    }

    /// <param name="fit">Of these very holds, as of tonight.</param>
    public void WatchBonds(StoredFit? fit, IReadOnlyCollection<HoldSpell> holds)
    {
        if (!IsOfTonight(fit))
        {
            Keep(kind => kind != WatchedStreamKind.Workshop);
            return;
        }
        Watch(
            fit,
            WatchedFit.From(fit),
            holds,
            h => h.AppliedOn,
            h => StreamOf(WatchedStreamKind.Adhesive, h.AdhesiveId),
            h => StreamOf(WatchedStreamKind.Lot, h.LotId)
        );
    }

    // Ends that came since a fit was made pull it aside: that would look like a decline.
    private bool IsOfTonight([NotNullWhen(true)] StoredFit? fit) => fit is { Converged: true } && fit.DataCut == _today;

    private void Keep(Func<WatchedStreamKind, bool> kinds) => _seen.UnionWith(_charts.Keys.Where(stream => kinds(stream.Kind)));

    private static WatchedStream? StreamOf(WatchedStreamKind kind, Guid? id) => id is { } known ? new(kind, known) : null;

    /// <param name="deliveredOn">Null for what has come to nobody yet.</param>
    /// <param name="streamsOf">A spell is in one stream of each.</param>
    private void Watch<T>(
        StoredFit fit,
        WatchedFit usual,
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
        var rows = new WatchedRows<T>(fit, usual, [.. watched.Select(w => w.Spell)]);
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
            _begun.Add(chart);
        }
        chart.Record(_today, deliveries[first..], StreamWatch.Evaluate(added.AsSpan(first)), limit);
        if (WatchAlarmRule.Raise(Guid.CreateVersion7(), stream, deliveries, added, from, limit, _today) is { } alarm)
            _raised.Add(alarm);
    }

    private bool IsRecent(LocalDate on) => on >= _today.PlusDays(-StreamWatch.WatchedDays);
}
