namespace HairClinic.Domain.LoadAhead;

/// <summary>Adds one client's weeks ahead to their salon. Keep one a thread: it works in its own arrays.</summary>
public sealed class ClientLoad(int weeks)
{
    private readonly double[] first = new double[7 * weeks];
    private readonly double[] again = new double[7 * weeks];
    private readonly double[] perDay = new double[7 * weeks];
    private readonly double[] washes = new double[7 * weeks];

    // Within a week an end is followed by another at most six days later.
    private readonly double[] afterOne = new double[7];
    private double[] survival = new double[7 * weeks];

    public void AddTo(SalonLoad salon, LoadQuestion question, LoadMinutes minutes)
    {
        for (var scenario = 0; scenario < LoadScenario.Three.Count; scenario++)
        {
            var longest = Math.Max(question.TargetDays, question.CurrentTargetDays);
            if (survival.Length < longest)
                survival = new double[longest];
            question.Hold(LoadScenario.Three[scenario]).SurvivalByDay(survival.AsSpan(0, longest));
            Array.Clear(first);
            if (question.BondAgeDays is { } age)
                RebondInterval.Fill(survival, question.CurrentTargetDays, age, first);
            else if (question.FirstBondInDays is { } start && start < first.Length)
                first[start] = 1;
            RebondInterval.Fill(survival, question.TargetDays, 0, again);
            RenewalCounts.Expect(first, again, perDay);
            RenewalCounts.Expect(again.AsSpan(0, afterOne.Length), again.AsSpan(0, afterOne.Length), afterOne);
            if (question.WashEveryDays is { } every)
                WashDays.Expect(question.NextWashInDays, every, perDay, washes);
            else
                Array.Clear(washes);
            for (var week = 0; week < weeks; week++)
                salon.Add(scenario, week, Week(week, question, minutes));
        }
    }

    private WeekLoad Week(int week, LoadQuestion question, LoadMinutes minutes)
    {
        var (from, through) = (7 * week, 7 * week + 6);
        var (mean, variance) = RenewalCounts.Within(perDay, afterOne, from, through);
        var (wash, spread) = (0.0, 0.0);
        for (var day = from; day <= through; day++)
        {
            wash += washes[day];
            spread += washes[day] * (1 - washes[day]);
        }
        var fitting = question.FittingInDays is { } fitted && fitted >= from && fitted <= through ? 1 : 0;
        return WeekLoad.Of(new VisitCount(mean, variance), new VisitCount(wash, spread), VisitCount.AtMostOne(fitting), minutes);
    }
}
