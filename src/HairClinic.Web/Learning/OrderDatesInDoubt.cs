namespace HairClinic.Web.Learning;

/// <summary>One kind's orders, apart: what is learnt from, and whose dates are asked about.</summary>
/// <param name="Arrived">Working days of orders that arrived, the newest last.</param>
/// <param name="Waited">Working days that orders in flight have waited, as far as anybody knows.</param>
public sealed record OrderDatesInDoubt(double[] Arrived, double[] Waited, IReadOnlyList<DateCheck> Asked)
{
    /// <param name="units">Of one kind.</param>
    public static OrderDatesInDoubt Find(
        IReadOnlyList<HairSystem> units,
        LeadTimePrior prior,
        LeadTimeForecasts orders,
        DateCheckFacts checks
    )
    {
        var arrived = units.Where(u => u.TellsOfLead).OrderBy(u => u.Dates.ArrivedOn).Select(u => Took(u, orders, checks)).ToList();
        // What is wrong for good tells nothing, and older ones say nothing about how the workshop works now.
        arrived = [.. arrived.Where(a => a.Standing != SpellStanding.LeftOut).TakeLast(StoredLead.Most)];
        var waiting = units.Where(u => u.State.IsInFlight()).Select(u => Waits(u, orders, checks)).ToList();
        var found = OutlyingLeads.Find(prior, [.. arrived.Select(a => a.ToJudge)], [.. waiting.Select(w => w.ToJudge)]);
        var strange = found.Arrived.Select(i => arrived[i]).Concat(found.InFlight.Select(i => waiting[i])).ToList();
        var usual = strange.Count == 0 ? default : found.Usual();
        return new OrderDatesInDoubt(
            [.. arrived.Where((_, i) => !found.Arrived.Contains(i)).Select(a => a.Days)],
            [
                .. waiting
                    .Select((w, i) => (w.Unit.IsBeingRemade, Days: found.InFlight.Contains(i) ? w.KnownDays : w.Days))
                    .Where(w => !w.IsBeingRemade && w.Days is not null)
                    .Select(w => w.Days!.Value),
            ],
            [.. strange.Select(s => s.ToCheck(usual, orders.Today))]
        );
    }

    private static Order Took(HairSystem unit, LeadTimeForecasts orders, DateCheckFacts checks)
    {
        var (from, until) = (unit.Dates.OrderedOn!.Value, unit.Dates.ArrivedOn!.Value);
        return new(unit, from, until, orders.WorkingDaysTaken(unit), checks.Standing(DateCheckKind.OrderTook, unit.Id, from, until));
    }

    private static Order Waits(HairSystem unit, LeadTimeForecasts orders, DateCheckFacts checks)
    {
        var since = unit.WaitingSince ?? orders.Today;
        var said = checks.LastSaidWaiting(unit.Id, since);
        var holds = OrderWaitingCheck.StillHolds(said, orders.Today);
        return new(unit, since, null, orders.WorkingDaysWaited(unit, orders.Today), holds ? SpellStanding.Trusted : SpellStanding.NotAsked)
        {
            KnownDays = said is { } until ? orders.WorkingDaysWaited(unit, until) : null,
        };
    }

    private sealed record Order(HairSystem Unit, LocalDate From, LocalDate? Until, double Days, SpellStanding Standing)
    {
        /// <summary>What of a wait is sure although it is asked about again: until somebody said that it goes on. Null where nobody did.</summary>
        public double? KnownDays { get; init; }

        public LeadToJudge ToJudge => new(Days, Standing == SpellStanding.Trusted);

        public DateCheck ToCheck((int From, int To) usual, LocalDate today) =>
            DateCheck.OfUnit(
                Guid.CreateVersion7(),
                Until is null ? DateCheckKind.OrderWaiting : DateCheckKind.OrderTook,
                Unit.Id,
                new DatesInDoubt(From, Until, (int)Days, usual.From, usual.To),
                today
            );
    }
}
