using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.LoadAhead;

/// <summary>Adds one client's weeks ahead to their salon. Keep one a thread: it works in its own arrays.</summary>
public sealed class ClientLoadCalculator(int weeks)
{
    private readonly double[] _first = new double[7 * weeks];
    private readonly double[] _again = new double[7 * weeks];
    private readonly double[] _perDay = new double[7 * weeks];
    private readonly double[] _washes = new double[7 * weeks];

    // Within a week an end is followed by another at most six days later.
    private readonly double[] _afterOne = new double[7];
    private double[] _survival = new double[7 * weeks];

    public void AddTo(SalonLoad salon, ClientLoadInput question, VisitTypeMinutes minutes)
    {
        for (var scenario = 0; scenario < PracticeEffectNode.Three.Count; scenario++)
        {
            var longest = Math.Max(question.TargetDays, question.CurrentTargetDays);
            if (_survival.Length < longest)
                _survival = new double[longest];
            question.Hold(PracticeEffectNode.Three[scenario]).SurvivalByDay(_survival.AsSpan(0, longest));
            Array.Clear(_first);
            if (question.BondAgeDays is { } age)
                RebondIntervalCalculator.FillChances(_survival, question.CurrentTargetDays, age, _first);
            else if (question.FirstBondInDays is { } start && start < _first.Length)
                _first[start] = 1;
            RebondIntervalCalculator.FillChances(_survival, question.TargetDays, 0, _again);
            RenewalCalculator.Expect(_first, _again, _perDay);
            RenewalCalculator.Expect(_again.AsSpan(0, _afterOne.Length), _again.AsSpan(0, _afterOne.Length), _afterOne);
            if (question.WashEveryDays is { } every)
                ExpectedWashes.Expect(question.NextWashInDays, every, _perDay, _washes);
            else
                Array.Clear(_washes);
            for (var week = 0; week < weeks; week++)
                salon.Add(scenario, week, Week(week, question, minutes));
        }
    }

    private WeekLoad Week(int week, ClientLoadInput question, VisitTypeMinutes minutes)
    {
        var (from, through) = (7 * week, 7 * week + 6);
        var (mean, variance) = RenewalCalculator.MomentsWithin(_perDay, _afterOne, from, through);
        var (wash, spread) = (0.0, 0.0);
        for (var day = from; day <= through; day++)
        {
            wash += _washes[day];
            spread += _washes[day] * (1 - _washes[day]);
        }
        var fitting = question.FittingInDays is { } fitted && fitted >= from && fitted <= through ? 1 : 0;
        return WeekLoad.FromCounts(
            new CountMoments(mean, variance),
            new CountMoments(wash, spread),
            CountMoments.Bernoulli(fitting),
            minutes
        );
    }
}

/// <summary>What each kind of visit takes, by the practice's services.</summary>
public readonly record struct VisitTypeMinutes(MinutesPerVisit Rebond, MinutesPerVisit Wash, MinutesPerVisit Fitting);

/// <summary>What one client's visits ahead depend on. Days are counted from today.</summary>
/// <remarks>Each hold is taken as the prediction of a single one: that a client's later holds resemble each other is left out of the band.</remarks>
/// <param name="Hold">The client's predictive hold when what all share lies so many standard deviations off.</param>
/// <param name="TargetDays">The target after snapping of a fresh bond, at least 1 and less than the weeks looked at.</param>
public sealed record ClientLoadInput(Func<PracticeEffectNode, LifePrediction> Hold, int TargetDays)
{
    /// <summary>Days the bond on the head has held; null where there is none.</summary>
    public int? BondAgeDays { get; init; }

    /// <summary>That bond's target, days after it was made.</summary>
    public int CurrentTargetDays { get; init; }

    /// <summary>The day of the first bond, where none is on the head and one is planned.</summary>
    public int? FirstBondInDays { get; init; }

    public int? WashEveryDays { get; init; }
    public int NextWashInDays { get; init; }
    public int? FittingInDays { get; init; }
}

/// <summary>What a kind of visit takes of a salon.</summary>
/// <param name="Chair">Minutes in the chair, waits for a coat to dry included.</param>
/// <param name="HandsOn">Minutes of a stylist.</param>
public readonly record struct MinutesPerVisit(double Chair, double HandsOn);

/// <summary>Wash-and-styles of a client by rhythm, less those that are done with a rebond.</summary>
public static class ExpectedWashes
{
    /// <summary>A wash within this many days of a rebond is done in the same visit.</summary>
    public const int MergedWithin = 3;

    /// <param name="nextIn">Days from today until the next by rhythm.</param>
    /// <param name="everyDays">7 or 14, or what the client likes.</param>
    /// <param name="rebonds">Expected rebonds a day.</param>
    public static void Expect(int nextIn, int everyDays, ReadOnlySpan<double> rebonds, Span<double> perDay)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(everyDays, 1);
        perDay.Clear();
        for (var day = Math.Max(0, nextIn); day < perDay.Length; day += everyDays)
        {
            var near = 0.0;
            for (var other = Math.Max(0, day - MergedWithin); other <= Math.Min(perDay.Length - 1, day + MergedWithin); other++)
                near += rebonds[other];
            perDay[day] = Math.Max(0, 1 - near);
        }
    }
}
