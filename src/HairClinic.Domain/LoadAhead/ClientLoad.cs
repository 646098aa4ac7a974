namespace HairClinic.Domain.LoadAhead;

/// <summary>Adds one client's weeks ahead to their salon. Keep one a thread: it works in its own arrays.</summary>
public sealed class ClientLoad(int weeks)
{
    private readonly double[] _first = new double[7 * weeks];
    private readonly double[] _again = new double[7 * weeks];
    private readonly double[] _perDay = new double[7 * weeks];
    private readonly double[] _washes = new double[7 * weeks];

    // Within a week an end is followed by another at most six days later.
    private readonly double[] _afterOne = new double[7];
    private double[] _survival = new double[7 * weeks];

    public void AddTo(SalonLoad salon, LoadQuestion question, LoadMinutes minutes)
    {
        for (var scenario = 0; scenario < LoadScenario.Three.Count; scenario++)
        {
            var longest = Math.Max(question.TargetDays, question.CurrentTargetDays);
            if (_survival.Length < longest)
                _survival = new double[longest];
            question.Hold(LoadScenario.Three[scenario]).SurvivalByDay(_survival.AsSpan(0, longest));
            Array.Clear(_first);
            if (question.BondAgeDays is { } age)
                RebondInterval.Fill(_survival, question.CurrentTargetDays, age, _first);
            else if (question.FirstBondInDays is { } start && start < _first.Length)
                _first[start] = 1;
            RebondInterval.Fill(_survival, question.TargetDays, 0, _again);
            RenewalCounts.Expect(_first, _again, _perDay);
            RenewalCounts.Expect(_again.AsSpan(0, _afterOne.Length), _again.AsSpan(0, _afterOne.Length), _afterOne);
            if (question.WashEveryDays is { } every)
                WashDays.Expect(question.NextWashInDays, every, _perDay, _washes);
            else
                Array.Clear(_washes);
            for (var week = 0; week < weeks; week++)
                salon.Add(scenario, week, Week(week, question, minutes));
        }
    }

    private WeekLoad Week(int week, LoadQuestion question, LoadMinutes minutes)
    {
        var (from, through) = (7 * week, 7 * week + 6);
        var (mean, variance) = RenewalCounts.Within(_perDay, _afterOne, from, through);
        var (wash, spread) = (0.0, 0.0);
        for (var day = from; day <= through; day++)
        {
            wash += _washes[day];
            spread += _washes[day] * (1 - _washes[day]);
        }
        var fitting = question.FittingInDays is { } fitted && fitted >= from && fitted <= through ? 1 : 0;
        return WeekLoad.Of(new VisitCount(mean, variance), new VisitCount(wash, spread), VisitCount.AtMostOne(fitting), minutes);
    }
}
