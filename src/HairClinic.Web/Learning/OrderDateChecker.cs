using HairClinic.Web.Data;

namespace HairClinic.Web.Learning;

/// <summary>Asks at once about the dates of orders as they were just written, by what the last night's run believed of their kind.</summary>
public static class OrderDateChecker
{
    public static async Task AskAsync(ClinicDb db, IReadOnlyCollection<HairSystem> units, LocalDate today, CancellationToken cancellation)
    {
        var told = units.Where(u => u.TellsOfLead).ToList();
        if (told.Count == 0)
            return;
        var kindIds = told.Select(u => u.UnitKindId).ToHashSet();
        var orders = new LeadTimeForecasts(
            await LifeSpellBuilder.UnitKindsAsync(db, cancellation),
            await db.Workshops.AsNoTracking().Include(w => w.Closures).ToDictionaryAsync(w => w.Id, cancellation),
            await db
                .StoredLeads.AsNoTracking()
                .Where(s => kindIds.Contains(s.UnitKindId))
                .ToDictionaryAsync(s => s.UnitKindId, cancellation),
            today
        );
        var strange = told.Where(u => !orders.IsBelieved(u.UnitKindId, orders.WorkingDaysTaken(u))).ToList();
        if (strange.Count == 0)
            return;
        var checks = await DateCheckFacts.LoadAsync(db, [.. strange.Select(u => u.Id)], cancellation);
        db.DateChecks.AddRange(
            checks.NotAskedYet(
                strange
                    .Where(u =>
                        checks.Standing(DateCheckKind.OrderTook, u.Id, u.Dates.OrderedOn!.Value, u.Dates.ArrivedOn)
                        == SpellStanding.NotAsked
                    )
                    .Select(u => QuestionOf(u, orders, today))
            )
        );
    }

    private static DateCheck QuestionOf(HairSystem unit, LeadTimeForecasts orders, LocalDate today)
    {
        var usual = orders.UsualWorkingDays(unit.UnitKindId);
        return DateCheck.OfUnit(
            Guid.CreateVersion7(),
            DateCheckKind.OrderTook,
            unit.Id,
            new DatesInDoubt(unit.Dates.OrderedOn!.Value, unit.Dates.ArrivedOn, orders.WorkingDaysTaken(unit), usual.From, usual.To),
            today
        );
    }
}
