using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Outlook;

/// <summary>Reads the weeks ahead as they were calculated last, beside the chairs and hands there will be.</summary>
internal static class WorkloadReader
{
    /// <returns>By salon, by name; the last is the whole practice where there are several. Empty before the first recalculation.</returns>
    public static async Task<IReadOnlyList<SalonLoadAndCapacity>> ReadAsync(ClinicDb db, CancellationToken cancellation)
    {
        var forecasts = await db.LoadForecasts.AsNoTracking().ToDictionaryAsync(f => f.SalonId, cancellation);
        var salons = await db
            .Salons.AsNoTracking()
            .Include(s => s.Hours)
            .Include(s => s.Closures)
            .AsSplitQuery()
            .OrderBy(s => s.Name)
            .ToListAsync(cancellation);
        var chairs = await db
            .Chairs.Where(c => !c.Retired)
            .GroupBy(c => c.SalonId)
            .Select(g => new { g.Key, Count = g.Count() })
            .ToDictionaryAsync(g => g.Key, g => g.Count, cancellation);
        var people = await db
            .People.AsNoTracking()
            .Where(p => !p.Left && p.Skills.Any())
            .Include(p => p.Salons)
            .Include(p => p.WorkSpells)
            .Include(p => p.Absences)
            .AsSplitQuery()
            .ToListAsync(cancellation);
        var weeks = new List<SalonLoadAndCapacity>();
        foreach (var salon in salons)
        {
            if (!forecasts.TryGetValue(salon.Id, out var forecast) || salon.Retired && forecast.Clients == 0)
                continue;
            var load = forecast.ToSalonLoad();
            var open = WeekMinutesCalculator.OpenMinutesPerWeek(HoursOf(salon, [], salon.Hours.Select(Weekly)), forecast.From, load.Weeks);
            var hands = new double[load.Weeks];
            foreach (var person in people.Where(p => p.Salons.Any(s => s.SalonId == salon.Id)))
                AddTo(hands, person, salon, forecast.From);
            var count = chairs.GetValueOrDefault(salon.Id);
            weeks.Add(new(salon.Id, salon.Name, forecast.From, forecast.Clients, load, [.. open.Select(m => count * m)], hands));
        }
        return weeks.Count > 1 ? [.. weeks, SalonLoadAndCapacity.Sum(weeks)] : weeks;
    }

    // Who keeps no hours of their own works the opening hours; of several salons', an equal share of each.
    private static void AddTo(double[] hands, Person person, Salon salon, LocalDate from)
    {
        var own = person.WorkSpells.Where(w => w.SalonId == salon.Id).Select(w => new WeekdayTimeRange(w.Day, w.From, w.To));
        var (week, share) = person.WorkSpells.Count > 0 ? (own, 1.0) : (salon.Hours.Select(Weekly), 1.0 / person.Salons.Count);
        var away = person.Absences.Select(a => a.Days);
        var minutes = WeekMinutesCalculator.OpenMinutesPerWeek(HoursOf(salon, away, week), from, hands.Length);
        for (var i = 0; i < hands.Length; i++)
            hands[i] += share * minutes[i];
    }

    private static OpeningHours HoursOf(Salon salon, IEnumerable<DateInterval> away, IEnumerable<WeekdayTimeRange> week) =>
        new(week, salon.Closures.Select(c => c.Days).Concat(away), salon.TimeZone);

    private static WeekdayTimeRange Weekly(SalonHours hours) => new(hours.Day, hours.Opens, hours.Closes);
}
