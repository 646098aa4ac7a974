namespace HairClinic.Web.Demo;

/// <summary>Who is busy when in the invented salons. Each stylist works at a chair of their own, so chairs and hands never clash.</summary>
public sealed class DemoSlotAllocator(Random random, LocalDate today)
{
    private const int Quarter = 15;
    private const int LongestSearchDays = 21;

    private readonly Dictionary<(string Stylist, LocalDate Day), List<(int From, int To)>> _busy = [];

    /// <summary>The first day from the wanted one on with room, with the client's own stylist if they are free.</summary>
    public DemoSlot Book(DemoSalon salon, string stylist, LocalDate wanted, int minutes)
    {
        var hands = salon.Stylists.Select(s => s.Name).ToList();
        for (var day = wanted; day < wanted.PlusDays(LongestSearchDays); day = day.PlusDays(1))
        {
            if (day.DayOfWeek == salon.RestDay(today))
                continue;
            foreach (var name in hands.OrderByDescending(h => h == stylist))
            {
                if (FreeStart(name, day, minutes) is not { } start)
                    continue;
                _busy[(name, day)].Add((start, start + minutes));
                return new DemoSlot(day, LocalTime.Midnight.PlusMinutes(start), minutes, $"Chair {hands.IndexOf(name) + 1}", name);
            }
        }
        throw new InvalidOperationException($"No room in {salon.Name} from {wanted} on.");
    }

    private int? FreeStart(string name, LocalDate day, int minutes)
    {
        if (!_busy.TryGetValue((name, day), out var taken))
            _busy[(name, day)] = taken = [];
        var (opens, closes) = (DemoSalon.Opens.Hour * 60, DemoSalon.Closes.Hour * 60);
        var starts = (closes - opens - minutes) / Quarter + 1;
        var first = random.Next(starts);
        for (var i = 0; i < starts; i++)
        {
            var start = opens + (first + i) % starts * Quarter;
            if (taken.TrueForAll(t => start + minutes <= t.From || start >= t.To))
                return start;
        }
        return null;
    }
}
