using HairClinic.Domain.Wear.Lifetimes;
using HairClinic.Domain.Wear.Watch;
using HairClinic.Web.Learning;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>The watch of one practice's workshops, adhesives and lots, as the program keeps it.</summary>
/// <remarks>Nobody closes an alarm by hand, be it true or not: what it named stays named until its units are used up.</remarks>
internal sealed class BookWatch
{
    private readonly List<WatchAlarm> _alarms = [];
    private readonly List<StoredWatch> _charts = [];

    /// <summary>Alarms as they were raised.</summary>
    public List<Alarm> Raised { get; } = [];

    /// <summary>The units of workshops that alarms named.</summary>
    public List<WatchedCohort> OfUnits { get; } = [];

    /// <summary>The bonds of adhesives and lots that alarms named.</summary>
    public List<WatchedCohort> OfBonds { get; } = [];

    /// <returns>Whether what is named has changed.</returns>
    /// <param name="holds">Null where bonds are not looked at that day.</param>
    public bool Look(int day, BookOfSpells book, StoredFit life, CheckedWearFit<HoldSpell>? holds)
    {
        var today = PracticeRows.DateOf(day);
        var night = new WatchNight(today, _alarms, _charts);
        var closed = _alarms.Count(a => !a.IsOpen);
        night.CloseUsedUp(book.LeftOf);
        night.WatchUnits(life, book.Lives, PracticeRows.LifeFactors, l => book.DeliveredOn(l.UnitId));
        if (holds is not null)
            night.WatchBonds(holds.Fit, holds.Spells);
        _charts.AddRange(night.Begun);
        _alarms.AddRange(night.Raised);
        Raised.AddRange(night.Raised.Select(a => new Alarm(day, a.Kind, BookRows.NumberOf(a.StreamId))));
        if (night.Raised.Count == 0 && closed == _alarms.Count(a => !a.IsOpen))
            return false;
        OfUnits.Clear();
        OfBonds.Clear();
        foreach (var alarm in _alarms)
        {
            (alarm.Kind == WatchedStreamKind.Workshop ? OfUnits : OfBonds).Add(
                new(alarm.Id, alarm.StreamId, alarm.CohortFrom, alarm.CohortThrough)
            );
        }
        return true;
    }
}

/// <summary>A stream that is said, on a day, to have got worse.</summary>
/// <param name="Number">Of the workshop, the adhesive or the lot.</param>
internal readonly record struct Alarm(int Day, WatchedStreamKind Kind, int Number);

/// <summary>What the watch reads of a practice's units.</summary>
internal sealed class BookOfSpells(IReadOnlyList<ClientBook> clients, IReadOnlyList<LifeSpell> lives)
{
    private readonly Dictionary<Guid, int?> _arrived = clients.SelectMany(c => c.Units).ToDictionary(u => u.Id, u => u.ArrivedOn);

    public IReadOnlyList<LifeSpell> Lives => lives;

    public NodaTime.LocalDate? DeliveredOn(Guid unit) => _arrived.GetValueOrDefault(unit) is { } day ? PracticeRows.DateOf(day) : null;

    /// <summary>How many of an alarm's units, or bonds, are in use, wait or are on their way.</summary>
    public int LeftOf(WatchAlarm alarm) =>
        alarm.Kind == WatchedStreamKind.Workshop
            ? clients
                .Where(c => BookRows.WorkshopId(c.Workshop) == alarm.StreamId)
                .SelectMany(c => c.Units)
                .Count(u => u.RetiredOn is null && (u.ArrivedOn is not { } on || alarm.Names(PracticeRows.DateOf(on))))
            : clients.Count(c =>
                c.Bonds is [.., { Held: null } bond]
                && alarm.StreamId == (alarm.Kind == WatchedStreamKind.Lot ? BookRows.LotId(bond.Lot) : BookRows.AdhesiveId(c.Adhesive))
                && alarm.Names(PracticeRows.DateOf(bond.AppliedOn))
            );
}
