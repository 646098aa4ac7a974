namespace HairClinic.Web.Learning;

public sealed partial class LifeFacts
{
    /// <summary>
    /// As the records stood at the end of an earlier day; loaded with the whole past. Orders that somebody was asked about count as any
    /// other: when they were asked about is not kept.
    /// </summary>
    /// <param name="clientId">Null for every unit there is.</param>
    public LifeFacts AsOf(LocalDate day, Guid? clientId = null)
    {
        var all = (clientId is { } id ? _all[id] : _all.SelectMany(own => own))
            .Select(u => (Unit: u.Unit.AsOf(day, [.. _stretches[u.Unit.Id]])!, LeftOn: u.LeftOn <= day ? u.LeftOn : null, (LocalDate?)null))
            .Where(u => u.Unit is not null)
            .ToList();
        var loans = (clientId is { } borrower ? _loans[borrower] : _loans.SelectMany(own => own))
            .Select(b => (Unit: b.Unit.AsOf(day, [.. _stretches[b.Unit.Id]]), Loan: b.Loan.AsOf(day)))
            .Where(b => b is { Unit: not null, Loan: not null })
            .Select(b => new BorrowedUnit(b.Unit!, b.Loan!))
            .ToList();
        var known = all.Select(u => u.Unit.Id).Concat(loans.Select(b => b.Unit.Id)).ToHashSet();
        return new LifeFacts(
            all,
            loans,
            known.SelectMany(unit => _stretches[unit]).Select(p => p.AsOf(day)).OfType<WornPeriod>(),
            known.SelectMany(unit => _looks[unit].Where(l => l.Day <= day).Select(look => (unit, look))),
            _habits
        );
    }

    /// <summary>Every unit there is, those of nobody's among them.</summary>
    public IEnumerable<HairSystem> Units => _units.SelectMany(own => own);
}
