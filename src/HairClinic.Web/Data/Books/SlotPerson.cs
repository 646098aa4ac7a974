namespace HairClinic.Web.Data.Books;

/// <summary>A person of the salon, when they work there, and when their hands are taken, in whichever salon.</summary>
/// <param name="Skills">The services they may do alone.</param>
public sealed record SlotPerson(
    Guid Id,
    string Name,
    IReadOnlySet<Guid> Skills,
    IReadOnlyList<Interval> Working,
    IReadOnlyList<Interval> Busy
)
{
    internal static async Task<IReadOnlyList<SlotPerson>> LoadForSalonAsync(
        ClinicDb db,
        Salon salon,
        Interval window,
        ILookup<Guid, Interval> busy,
        CancellationToken cancellation
    )
    {
        var (first, last) = (salon.DayOf(window.Start), salon.DayOf(window.End));
        var people = await db
            .People.AsNoTracking()
            .Where(p => !p.Left && p.Skills.Any() && p.Salons.Any(s => s.SalonId == salon.Id))
            .OrderBy(p => p.Name)
            .Select(p => new
            {
                p.Id,
                p.Name,
                Skills = p.Skills.Select(s => s.ServiceKindId).ToList(),
                Spells = p
                    .WorkSpells.Select(w => new
                    {
                        w.SalonId,
                        w.Day,
                        w.From,
                        w.To,
                    })
                    .ToList(),
                Absences = p.Absences.Where(a => a.From <= last && a.To >= first).Select(a => new { a.From, a.To }).ToList(),
            })
            .ToListAsync(cancellation);
        return
        [
            .. people.Select(p => new SlotPerson(
                p.Id,
                p.Name,
                p.Skills.ToHashSet(),
                Work(
                    p.Spells.Select(w => (w.SalonId, new WeekdayTimeRange(w.Day, w.From, w.To))),
                    p.Absences.Select(a => new DateInterval(a.From, a.To))
                ),
                [.. busy[p.Id]]
            )),
        ];

        // A person without hours of their own works the opening hours.
        IReadOnlyList<Interval> Work(IEnumerable<(Guid SalonId, WeekdayTimeRange Hours)> spells, IEnumerable<DateInterval> away)
        {
            var own = spells.ToList();
            var week =
                own.Count > 0
                    ? own.Where(w => w.SalonId == salon.Id).Select(w => w.Hours)
                    : salon.Hours.Select(h => new WeekdayTimeRange(h.Day, h.Opens, h.Closes));
            return new OpeningHours(week, away, salon.TimeZone).Between(window.Start, window.End);
        }
    }
}
