using HairClinic.Domain.Wear;

namespace HairClinic.Domain.Replacement;

/// <summary>The days from today on which a workshop works: its closures are added to every arrival, and never learnt as lead time.</summary>
/// <remarks>Make one a workshop and day, and keep it for the batch.</remarks>
public sealed class WorkshopWorkingDays
{
    private readonly int[] _worked;
    private readonly int[] _dayOf;

    /// <param name="closures">Both ends included; they may overlap.</param>
    /// <param name="length">How many days to look ahead.</param>
    public WorkshopWorkingDays(LocalDate today, IEnumerable<DateInterval> closures, int length)
    {
        var closed = new bool[length + 1];
        var start = CivilDayNumber.Number(today);
        foreach (var closure in closures)
        {
            var last = Math.Min(length, CivilDayNumber.Number(closure.End) - start);
            for (var day = Math.Max(1, CivilDayNumber.Number(closure.Start) - start); day <= last; day++)
                closed[day] = true;
        }
        (_worked, _dayOf) = (new int[length + 1], new int[length + 1]);
        var count = 0;
        for (var day = 1; day <= length; day++)
        {
            if (!closed[day])
                _dayOf[++count] = day;
            _worked[day] = count;
        }
        Count = count;
    }

    /// <summary>Working days within sight.</summary>
    public int Count { get; }

    /// <summary>Working days after today up to and with that day.</summary>
    public int CountUntil(int day) => _worked[day];

    /// <summary>The day, from today, that ends so many working days; past what is in sight where there are not so many.</summary>
    public int CalendarDayAfter(int workingDays) => workingDays <= Count ? _dayOf[workingDays] : int.MaxValue;

    /// <summary>Working days after one day up to and with another: how long an order took or has waited, closures apart.</summary>
    public static int CountBetween(LocalDate from, LocalDate through, IEnumerable<DateInterval> closures)
    {
        var (first, last) = (CivilDayNumber.Number(from), CivilDayNumber.Number(through));
        var closed = closures.Select(c => (From: CivilDayNumber.Number(c.Start), Through: CivilDayNumber.Number(c.End))).ToList();
        return Enumerable.Range(first + 1, Math.Max(0, last - first)).Count(day => !closed.Exists(c => c.From <= day && day <= c.Through));
    }
}
