using NodaTime;

namespace HairClinic.Domain.LoadAhead;

/// <summary>Expected orders of one client by month: the next on its reorder day, those after it a unit's life apart.</summary>
public static class OrdersAhead
{
    /// <param name="orderInDays">Days until the next order; 0 where it is due or late.</param>
    /// <param name="life">Chance by days that a unit lasts so long, from one order to the next; nothing on 0.</param>
    /// <param name="months">Adds to the month's place, counted from today's month.</param>
    public static void AddTo(Span<double> months, LocalDate today, int orderInDays, ReadOnlySpan<double> life, int days)
    {
        var (first, perDay) = (new double[days], new double[days]);
        if (orderInDays < days)
            first[orderInDays] = 1;
        RenewalCounts.Expect(first, life, perDay);
        for (var day = 0; day < days; day++)
        {
            var date = today.PlusDays(day);
            var month = 12 * (date.Year - today.Year) + date.Month - today.Month;
            if (month < months.Length)
                months[month] += perDay[day];
        }
    }
}
