namespace HairClinic.Benchmarks.Worlds;

/// <summary>One client, day by day: what arrives is made ready, what is due is taken down and looked at, what is needed is ordered.</summary>
internal sealed class ClientDays(Traits traits, PracticeDays practice)
{
    private static readonly int[] AskedAhead = [0, 30, 60, 90];
    private readonly List<UnitTruth> _units = [];
    private (UnitTruth Unit, BondRecord Record, BondTruth Truth, int VisitOn)? _bond;
    private int _orderBy = int.MaxValue;
    private bool _happened;

    public ClientBook Book { get; } = new(traits.Client, traits.Base, traits.Workshop, traits.Adhesive, traits.Oily, traits.Heat);

    public void Live(int day)
    {
        if (day < traits.FirstDay)
            return;
        if (day == traits.FirstDay)
            Begin(day);
        Receive(day);
        End(day);
        if (_bond is null)
            PutOn(day, Ready(day));
        else if (day >= _bond.Value.VisitOn)
            TakeDown(day);
        if (day < 0)
            return;
        if (day % PracticeDays.AskEvery == 0 && practice.Policy.IsAdvice && _bond is not null)
            Ask(day);
        Order(day);
        practice.Measures.Day(
            !_units.Exists(u => u.Record.ReadyOn <= day && !u.HasEnded),
            _bond is null,
            Book.Units.Count(u => u.ReadyOn <= day && u.RetiredOn is null && !u.IsWorn),
            Book.Units.Count(u => u.IsInFlight)
        );
    }

    private void Begin(int day)
    {
        for (var i = 0; i <= traits.Spares; i++)
            Add(practice.Truth.AtHand(traits, i)).ReadyOn = Book.Units[^1].ArrivedOn = day;
    }

    private UnitRecord Add(UnitTruth unit)
    {
        unit.Record.Id = new Guid(Book.Client, (short)_units.Count, 0, [0, 0, 0, 0, 0, 0, 0, 5]);
        _units.Add(unit);
        Book.Units.Add(unit.Record);
        return unit.Record;
    }

    private void Receive(int day)
    {
        foreach (var unit in _units)
        {
            if (unit.Record.ReadyOn is not null)
                continue;
            if (unit.Delivery.FaultyOn == day)
                (unit.Record.IsRemade, unit.Record.WaitingSince) = (true, day);
            if (unit.Delivery.ArrivesOn == day)
                unit.Record.ArrivedOn = day;
            if (unit.Delivery.ReadyOn == day)
                unit.Record.ReadyOn = day;
            _happened |= unit.Delivery.FaultyOn == day || unit.Delivery.ArrivesOn == day;
        }
    }

    // Nobody sees it on that day: it is found at the next take-down.
    private void End(int day)
    {
        if (_bond?.Unit is not { HasEnded: false } unit || !unit.IsWornOut(unit.Record.WornDays(day)))
            return;
        unit.HasEnded = true;
        practice.Measures.WornOut(Book, day, Ready(day) is null, unit);
    }

    private UnitTruth? Ready(int day) => _units.Find(u => u.Record.ReadyOn <= day && !u.HasEnded);

    private void PutOn(int day, UnitTruth? unit)
    {
        if (unit is null || (day != traits.FirstDay && !PracticeRows.IsOpen(day)))
            return;
        var truth = practice.Truth.Bond(traits, Book.Bonds.Count, day);
        var due = PracticeRows.NextOpen(day + Policy.Rhythm(traits.Base));
        if (practice.Policy.IsAdvice)
        {
            (var said, due) = practice.Advice.Bond(Book, day);
            practice.Measures.Band("hold", day, said, 0, truth.Hold, PracticeRows.UsualHolds[traits.Base]);
            if (unit.Record.Worn.Count == 0 && day >= 0)
                SayLife("new unit", day, unit);
        }
        var visitOn = Math.Min(due, PracticeRows.NextOpen(day + truth.ComesAfter));
        if (unit.RepairAt < double.PositiveInfinity)
            visitOn = Math.Min(
                visitOn,
                PracticeRows.NextOpen(day + Math.Max(1, (int)Math.Ceiling(unit.RepairAt - unit.Record.WornDays(day))))
            );
        var bond = new BondRecord(day, due);
        Book.Bonds.Add(bond);
        unit.Record.Worn.Add((day, null));
        (_bond, _happened) = ((unit, bond, truth, visitOn), true);
    }

    private void TakeDown(int day)
    {
        var (unit, bond, truth, _) = _bond!.Value;
        var record = unit.Record;
        record.Worn[^1] = (bond.AppliedOn, day);
        (bond.Held, bond.RemovedOn) = (truth.Seen(day - bond.AppliedOn), day);
        practice.Measures.Bond(day, truth.Hold < day - bond.AppliedOn);
        (_bond, _happened) = (null, true);
        var worn = record.WornDays(day);
        var wornOut = unit.IsWornOut(worn);
        record.Looks.Add(new Look(day, practice.Grader.Write(unit, worn, wornOut)));
        if (!wornOut)
        {
            if (worn >= unit.RepairAt)
            {
                unit.Repair(worn);
                record.RepairedOn.Add(day);
            }
            if (record.Worn.Count % 3 == 0 && day >= 0 && practice.Policy.IsAdvice)
                SayLife("remaining", day, unit);
            PutOn(day, unit);
            return;
        }
        record.RetiredOn = day;
        var next = Ready(day);
        practice.Measures.Found(day, next is null);
        if (day >= 0 && !practice.Policy.IsAdvice && practice.Policy.Orders(Book, day, found: true))
            Place(day, 1);
        PutOn(day, next);
    }

    private void SayLife(string kind, int day, UnitTruth unit)
    {
        var worn = unit.Record.WornDays(day);
        practice.Measures.Band(
            kind,
            day,
            practice.Advice.Life(Book, unit.Record, day),
            worn,
            unit.Life - worn,
            PracticeRows.UsualLives[traits.Base]
        );
    }

    private void Ask(int day)
    {
        const int Draws = 8;
        Span<double> gaps = stackalloc double[AskedAhead[^1] + 1];
        practice.Advice.GapByOrderDay(Book, day, gaps);
        var hair = _units.Where(u => u.Record.RetiredOn is null).Sum(u => Math.Max(0, u.Life - u.Record.WornDays(day)));
        for (var i = 0; i < AskedAhead.Length; i++)
        {
            var late = 0;
            for (var draw = 0; draw < Draws; draw++)
                late += hair < practice.Truth.Ready(traits, day + AskedAhead[i], day, i * Draws + draw) - day ? 1 : 0;
            practice.Measures.Chance(day, gaps[AskedAhead[i]], (double)late / Draws);
        }
    }

    private void Order(int day)
    {
        if (!practice.Policy.IsAdvice)
        {
            if (PracticeRows.IsOpen(day) && practice.Policy.Orders(Book, day, found: false))
                Place(day, 1);
            return;
        }
        if (_happened || (day + traits.Client) % PracticeDays.PlanEvery == 0)
        {
            _orderBy = practice.Advice.OrderBy(Book, day);
            practice.Advice.Warn(Book, day);
        }
        _happened = false;
        if (_orderBy > day || !PracticeRows.IsOpen(day))
            return;
        Place(day, practice.Advice.Quantity(Book, day));
        _orderBy = practice.Advice.OrderBy(Book, day);
    }

    private void Place(int day, int units)
    {
        for (; units > 0; units--)
        {
            var unit = Add(practice.Truth.Ordered(traits, _units.Count, day));
            unit.OrderedOn = unit.WaitingSince = day;
        }
    }
}
