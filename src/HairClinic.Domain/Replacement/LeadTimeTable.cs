using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Replacement;

/// <summary>Λ* on whole working days: the lead time, or with the remake rate's chance two of them with an inspection between.</summary>
/// <remarks>Make one a workshop and kind, and keep it for the batch. Days past its end are kept together as never.</remarks>
public sealed class LeadTimeTable
{
    private LeadTimeTable(double[] mass)
    {
        Mass = mass;
        Never = Math.Max(0, 1 - mass.Sum());
    }

    internal double[] Mass { get; }

    /// <summary>The chance that it takes longer than the table is long.</summary>
    public double Never { get; }

    /// <summary>For an order placed today or later.</summary>
    /// <param name="inspectionDays">Until a unit that must be remade is sent back.</param>
    public static LeadTimeTable FromLeadTime(LeadTime lead, double remakeRate, int inspectionDays, int length)
    {
        var laid = lead.MassByDay(length);
        return Mixed(laid, laid, remakeRate, inspectionDays);
    }

    /// <summary>For an order in flight: what is left of it, in working days from today.</summary>
    /// <param name="learnt">The order is one of those the lead time was made with; false where it was left out.</param>
    public static LeadTimeTable BuildRemaining(
        LeadTime lead,
        double waitedDays,
        double remakeRate,
        int inspectionDays,
        int length,
        bool learnt = true
    ) =>
        Mixed(MassFromSurvival(lead.SurvivalFunctionGiven(waitedDays, learnt), length), lead.MassByDay(length), remakeRate, inspectionDays);

    /// <summary>The chance that it is not here after so many working days.</summary>
    public double Survival(int days)
    {
        var sum = Never;
        for (var day = days + 1; day < Mass.Length; day++)
            sum += Mass[day];
        return sum;
    }

    /// <summary>The working days by which it is here with at least such a chance; the table's length where it never is.</summary>
    public int Quantile(double chance)
    {
        var sum = 0.0;
        for (var day = 0; day < Mass.Length; day++)
        {
            sum += Mass[day];
            if (sum >= chance)
                return day;
        }
        return Mass.Length;
    }

    internal static double[] MassFromSurvival(Func<double, double> later, int length)
    {
        var mass = new double[length];
        var before = 1.0;
        for (var day = 0; day < length; day++)
        {
            var after = later(day + 0.5);
            (mass[day], before) = (before - after, after);
        }
        return mass;
    }

    private static LeadTimeTable Mixed(double[] first, double[] second, double remakeRate, int inspectionDays)
    {
        if (remakeRate is < 0 or > 1)
            throw new ArgumentOutOfRangeException(nameof(remakeRate), "A rate lies between 0 and 1.");
        var mixed = Array.ConvertAll(first, mass => (1 - remakeRate) * mass);
        if (remakeRate > 0)
        {
            for (var day = 0; day + inspectionDays < mixed.Length; day++)
            {
                var rest = mixed.AsSpan(day + inspectionDays);
                VectorSums.AddScaled(rest, second.AsSpan(0, rest.Length), remakeRate * first[day]);
            }
        }
        return new LeadTimeTable(mixed);
    }
}

/// <summary>When an order in flight will arrive, given that it is not here today: never a day in the past.</summary>
/// <param name="left">What is left of its lead time, as <see cref="LeadTimeTable.BuildRemaining"/> has it.</param>
public sealed class ArrivalForecast(LeadTimeTable left, WorkshopWorkingDays workshop, LocalDate today, int daysInSight)
{
    /// <summary>Four orders in five arrive between these.</summary>
    public (LocalDate Early, LocalDate Late) Likely => (Quantile(0.1), Quantile(0.9));

    /// <summary>The first day by which it is here with at least such a chance; the last in sight where none is.</summary>
    public LocalDate Quantile(double chance) => today.PlusDays(Math.Min(workshop.CalendarDayAfter(left.Quantile(chance)), daysInSight));
}
