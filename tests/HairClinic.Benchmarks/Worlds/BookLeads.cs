using HairClinic.Domain.Checks;
using HairClinic.Domain.HairSystems;
using HairClinic.Domain.Replacement;
using HairClinic.Domain.Wear.Lifetimes;
using NodaTime;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>What orders of one practice take, as the program learns it: lead times with closures and remakes, and preparation.</summary>
internal sealed class BookLeads(Desk desk)
{
    /// <summary>Days ahead, as far as lead times are laid out.</summary>
    private const int Sight = 400;

    private readonly Dictionary<(int Kind, int Workshop), OfKind> _kinds = [];
    private readonly Dictionary<int, DateInterval[]> _closures = [];
    private LocalDate _today = PracticeRows.DateOf(0);

    public PreparationTime Preparation { get; private set; } = PreparationTime.Fixed(PracticeRows.PreparationDays);

    public LeadTimeTable OfNew(ClientBook client) => KindOf(client).New;

    /// <summary>Of an order in flight, what is left.</summary>
    public LeadTimeTable Left(ClientBook client, UnitRecord unit, int day) =>
        KindOf(client)
            .Left(
                WorkshopWorkingDays.CountBetween(
                    PracticeRows.DateOf(unit.WaitingSince ?? day),
                    PracticeRows.DateOf(day),
                    ClosuresOf(client.Workshop)
                )
            );

    /// <summary>The days on which a client's workshop works; null where it is not known to close.</summary>
    public WorkshopWorkingDays? DaysOf(ClientBook client, int day, int sight) =>
        ClosuresOf(client.Workshop) is { Length: > 0 } closures ? new(PracticeRows.DateOf(day), closures, sight) : null;

    public void Learn(int day, IReadOnlyList<ClientBook> clients)
    {
        _today = PracticeRows.DateOf(day);
        var asked = new List<DateCheck>();
        for (var workshop = 0; workshop < PracticeRows.Leads.Length; workshop++)
        {
            _closures[workshop] = [.. desk.ClosuresOf(BookRows.WorkshopId(workshop), _today)];
            var made = clients.Where(c => c.Workshop == workshop).ToList();
            var remakes = BookRows.Remakes(made.SelectMany(c => c.Units));
            for (var kind = 0; kind < PracticeRows.Lives.Length; kind++)
                _kinds[(kind, workshop)] = Learn([.. made.Where(c => c.Base == kind).SelectMany(c => c.Units)], workshop, remakes, asked);
        }
        desk.Bring(asked, DateCheckKind.OrderTook, DateCheckKind.OrderWaiting);
        desk.Bring([.. Closures(clients)], DateCheckKind.WorkshopClosed);
        Prepare(day, clients);
    }

    private DateInterval[] ClosuresOf(int workshop) => _closures.GetValueOrDefault(workshop, []);

    private OfKind KindOf(ClientBook client) =>
        _kinds.TryGetValue((client.Base, client.Workshop), out var known)
            ? known
            : _kinds[(client.Base, client.Workshop)] = new OfKind(
                LeadTime.Learn(PracticeRows.Leads[client.Workshop], [], []),
                PracticeRows.Remakes,
                _ => true
            );

    // As the program's nightly run: what lies beyond what is believed is asked about, and nothing is learnt from it until then.
    private OfKind Learn(List<UnitRecord> units, int workshop, RemakeRate remakes, List<DateCheck> asked)
    {
        var (prior, facts) = (PracticeRows.Leads[workshop], desk.Facts);
        var arrived = units
            .Where(u => u is { OrderedOn: not null, ArrivedOn: not null, IsRemade: false })
            .OrderBy(u => u.ArrivedOn)
            .Select(u => (Unit: u, From: PracticeRows.DateOf(u.OrderedOn!.Value), Until: PracticeRows.DateOf(u.ArrivedOn!.Value)))
            .TakeLast(StoredLead.Most)
            .Select(o => (o.Unit, o.From, o.Until, Days: (double)WorkshopWorkingDays.CountBetween(o.From, o.Until, ClosuresOf(workshop))))
            .ToList();
        var waiting = units
            .Where(u => u is { IsInFlight: true, WaitingSince: not null })
            .Select(u => (Unit: u, Since: PracticeRows.DateOf(u.WaitingSince!.Value)))
            .Select(w => (w.Unit, w.Since, Said: facts.LastSaidWaiting(w.Unit.Id, w.Since)))
            .ToList();
        var found = OutlyingLeads.Find(
            prior,
            [
                .. arrived.Select(a => new LeadToJudge(
                    a.Days,
                    facts.Standing(DateCheckKind.OrderTook, a.Unit.Id, a.From, a.Until) == SpellStanding.Trusted
                )),
            ],
            [.. waiting.Select(w => new LeadToJudge(Waited(w.Since, _today), OrderWaitingCheck.StillHolds(w.Said, _today)))]
        );
        asked.AddRange(found.Arrived.Select(i => Check(DateCheckKind.OrderTook, arrived[i].Unit, arrived[i].From, arrived[i].Until)));
        asked.AddRange(found.InFlight.Select(i => Check(DateCheckKind.OrderWaiting, waiting[i].Unit, waiting[i].Since, null)));
        double[] waits =
        [
            .. waiting
                .Select((w, i) => (w.Unit.IsRemade, Until: found.InFlight.Contains(i) ? w.Said : _today, w.Since))
                .Where(w => !w.IsRemade && w.Until is not null)
                .Select(w => Waited(w.Since, w.Until!.Value)),
        ];
        var longest = waits.DefaultIfEmpty().Max() + 14;
        return new OfKind(
            LeadTime.Learn(prior, [.. arrived.Where((_, i) => !found.Arrived.Contains(i)).Select(a => a.Days)], waits),
            remakes,
            waited => waited <= longest
        );

        double Waited(LocalDate since, LocalDate until) => WorkshopWorkingDays.CountBetween(since, until, ClosuresOf(workshop));
        DateCheck Check(DateCheckKind kind, UnitRecord unit, LocalDate from, LocalDate? until) =>
            DateCheck.OfUnit(Guid.CreateVersion7(), kind, unit.Id, new DatesInDoubt(from, until, 0, 0, 0), _today);
    }

    private IEnumerable<DateCheck> Closures(IReadOnlyList<ClientBook> clients)
    {
        for (var workshop = 0; workshop < PracticeRows.Leads.Length; workshop++)
        {
            var (own, id) = (workshop, BookRows.WorkshopId(workshop));
            var orders = clients
                .Where(c => c.Workshop == own)
                .SelectMany(c => c.Units.Select(u => (c.Base, Unit: u)))
                .Where(u => u.Unit is { OrderedOn: not null, ArrivedOn: not null, IsRemade: false })
                .Select(u => new OrderSpan(
                    PracticeRows.DateOf(u.Unit.OrderedOn!.Value),
                    PracticeRows.DateOf(u.Unit.ArrivedOn!.Value),
                    u.Base,
                    PracticeRows.Leads[own]
                ))
                .DistinctBy(o => (o.OrderedOn, o.ArrivedOn))
                .ToList();
            if (orders.Count == 0 || RepeatedClosureRule.Find(orders, ClosuresOf(own), _today) is not { } seen)
                continue;
            var before = desk.Facts.OfWorkshop(id).Where(c => c.Until is { } until && seen.Meets(c.From, until)).ToList();
            if (before.Count == 0)
                yield return DateCheck.OfWorkshop(Guid.CreateVersion7(), id, seen, _today);
            foreach (var open in before.Where(c => c.IsOpen))
                yield return open;
        }
    }

    private void Prepare(int day, IReadOnlyList<ClientBook> clients)
    {
        var seen = clients.SelectMany(c => Prepared(c, day)).OrderBy(p => p.ArrivedOn).ToList();
        double[] taken = [.. seen.Where(p => p.Bonded).Select(p => (double)p.Days)];
        Preparation = PreparationTime.Learn(
            PracticeRows.PreparationDays,
            taken.AsSpan(Math.Max(0, taken.Length - StoredPreparation.Most)),
            [.. seen.Where(p => !p.Bonded).Select(p => (double)p.Days)]
        );
    }

    private static IEnumerable<(int ArrivedOn, int Days, bool Bonded)> Prepared(ClientBook client, int day)
    {
        foreach (var unit in client.Units.Where(u => u is { OrderedOn: not null, ArrivedOn: not null }))
        {
            var came = PracticeRows.DateOf(unit.ArrivedOn!.Value);
            var others = client
                .Units.Where(u => u != unit)
                .Select(u => new HairInHouse(Date(u.ArrivedOn ?? u.ReadyOn), Date(u.RetiredOn), Date(u.RetiredOn)));
            var bonded = unit.Worn.Count > 0 ? PracticeRows.DateOf(unit.Worn[0].From) : (LocalDate?)null;
            if (
                AwaitedUnitRule.WasAwaited(came, others)
                && AwaitedUnitRule.Observe(came, bonded, Date(unit.RetiredOn), BondsOf(client, but: unit), PracticeRows.DateOf(day))
                    is var (days, done)
            )
                yield return (unit.ArrivedOn.Value, days, done);
        }
    }

    private static IEnumerable<LocalDate> BondsOf(ClientBook client, UnitRecord but) =>
        client.Units.Where(u => u != but).SelectMany(u => u.Worn.Select(w => PracticeRows.DateOf(w.From)));

    private static LocalDate? Date(int? day) => day is { } known ? PracticeRows.DateOf(known) : null;

    private sealed class OfKind(LeadTime lead, RemakeRate remakes, Func<int, bool> isLearntFrom)
    {
        private readonly Dictionary<int, LeadTimeTable> _left = [];

        public LeadTimeTable New { get; } = LeadTimeTable.FromLeadTime(lead, remakes.Mean, PracticeRows.InspectionDays, Sight);

        public LeadTimeTable Left(int waited) =>
            _left.TryGetValue(waited, out var known)
                ? known
                : _left[waited] = LeadTimeTable.BuildRemaining(
                    lead,
                    waited,
                    remakes.Mean,
                    PracticeRows.InspectionDays,
                    Sight,
                    isLearntFrom(waited)
                );
    }
}
