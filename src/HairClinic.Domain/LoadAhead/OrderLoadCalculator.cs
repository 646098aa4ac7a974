namespace HairClinic.Domain.LoadAhead;

/// <summary>Expected orders of one client by month: the next on its reorder day, those after it a unit's life apart.</summary>
public static class OrderLoadCalculator
{
    /// <summary>Adds to the months' places, counted from today's month; what lies beyond the last is left out.</summary>
    /// <param name="orderInDays">Days until the next order; 0 where it is due or late.</param>
    /// <param name="life">Chance by days that a unit lasts so long, from one order to the next; nothing on 0.</param>
    /// <param name="days">How far is looked ahead.</param>
    public static void AddTo(OrderLoad load, int scenario, LocalDate today, int orderInDays, ReadOnlySpan<double> life, int days)
    {
        var (first, perDay, afterOne) = (new double[days], new double[days], new double[days]);
        if (orderInDays < days)
            first[orderInDays] = 1;
        RenewalCalculator.Expect(first, life, perDay);
        RenewalCalculator.Expect(life, life, afterOne);
        var from = 0;
        for (var month = 0; month < load.Months && from < days; month++)
        {
            var next = today.PlusMonths(month + 1).With(DateAdjusters.StartOfMonth);
            var end = Math.Min(days, Period.DaysBetween(today, next));
            var (mean, variance) = RenewalCalculator.MomentsWithin(perDay, afterOne, from, end - 1);
            load.Add(scenario, month, new CountMoments(mean, variance));
            from = end;
        }
    }
}
