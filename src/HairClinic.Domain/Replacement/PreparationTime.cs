using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Domain.Replacement;

/// <summary>Calendar days from a unit's arrival until it can be bonded: inspection, colour, cut-in, waiting for a chair.</summary>
/// <remarks>
/// Until <see cref="LeastUnits"/> units were seen the practice's setting stands, as a fixed number of days. From then on it is learnt
/// as a lead time is: the setting is its half with a usual spread, weighs like four units, and units that are still waited for say
/// "longer than so far".
/// </remarks>
public sealed class PreparationTime
{
    /// <summary>Fewer say nothing that the practice does not know better.</summary>
    public const int LeastUnits = 5;

    /// <summary>Days that it is looked ahead; what lies past them never ends.</summary>
    public const int Days = 366;

    // Nine units in ten within one and a half times the setting (common practice, no source).
    private const double UsualNineInTen = 1.5;

    // Less than this is not followed up: it counts as never.
    private const double Sliver = 1e-7;

    private readonly double[] _mass;

    // The chance that is left before each day.
    private readonly double[] _before;

    private PreparationTime(int settingDays, double[] mass, int units)
    {
        (SettingDays, _mass, Units) = (settingDays, mass, units);
        _before = new double[mass.Length + 1];
        for (var day = 0; day < mass.Length; day++)
            _before[day + 1] = _before[day] + mass[day];
    }

    /// <summary>The practice's setting behind it.</summary>
    public int SettingDays { get; }

    /// <summary>Units it was learnt from; 0 where it is the setting.</summary>
    public int Units { get; }

    public bool IsLearnt => Units > 0;

    /// <summary>The days by which half of the units, or nine in ten, are ready.</summary>
    public int HalfDays => Quantile(0.5);

    public int NineInTenDays => Quantile(0.9);

    /// <summary>The chance of each whole day; what is missing lies past the last.</summary>
    public ReadOnlySpan<double> MassByDay => _mass;

    /// <summary>Of a table by the day on which a unit is ready, what to expect by the day on which it arrives.</summary>
    /// <param name="learnt">Null for the fixed number of days.</param>
    /// <param name="beyond">What stands past the table's end.</param>
    internal static void ByArrivalDay(
        PreparationTime? learnt,
        int fixedDays,
        ReadOnlySpan<double> byReadyDay,
        double beyond,
        Span<double> byArrivalDay
    )
    {
        for (var day = 0; day < byReadyDay.Length; day++)
        {
            if (learnt is null)
                byArrivalDay[day] = day + fixedDays < byReadyDay.Length ? byReadyDay[day + fixedDays] : beyond;
            else
            {
                var seen = Math.Min(learnt._mass.Length, byReadyDay.Length - day);
                var within = VectorSums.Dot(learnt._mass.AsSpan(0, seen), byReadyDay.Slice(day, seen));
                byArrivalDay[day] = within + (1 - learnt._before[seen]) * beyond;
            }
        }
    }

    public static PreparationTime Fixed(int days)
    {
        var mass = new double[days + 1];
        mass[days] = 1;
        return new PreparationTime(days, mass, 0);
    }

    /// <param name="taken">Days that units took that were awaited (<see cref="AwaitedUnitRule"/>).</param>
    /// <param name="waited">How long those that are not bonded yet have waited.</param>
    public static PreparationTime Learn(int settingDays, ReadOnlySpan<double> taken, ReadOnlySpan<double> waited)
    {
        // Of days that nobody would believe either a date is wrong, or the client did not come: neither is preparation.
        var prior = PriorOf(settingDays);
        var (done, open) = (ToJudge(taken), ToJudge(waited));
        var outlying = OutlyingLeads.Find(prior, done, open);
        var usual = Usual(taken, outlying.Arrived);
        return usual.Length < LeastUnits
            ? Fixed(settingDays)
            : new(settingDays, MassOf(LeadTime.Learn(prior, usual, Usual(waited, outlying.InFlight))), usual.Length);
    }

    /// <summary>As a row keeps it; see <see cref="FromStoredValues"/>.</summary>
    internal double[] ToStoredValues() => [SettingDays, Units, .. _mass];

    /// <returns>Null where nothing is kept, or another setting was behind it.</returns>
    internal static PreparationTime? FromStoredValues(int settingDays, double[] kept) =>
        kept.Length < 3 || kept[0] != settingDays ? null : new(settingDays, kept[2..], (int)kept[1]);

    private int Quantile(double chance)
    {
        var sum = 0.0;
        for (var day = 0; day < _mass.Length; day++)
        {
            sum += _mass[day];
            if (sum >= chance)
                return day;
        }
        return _mass.Length;
    }

    private static double[] MassOf(LeadTime time)
    {
        var mass = LeadTimeTable.MassFromSurvival(time.Survival, Days);
        var length = mass.Length;
        while (length > 1 && mass[length - 1] < Sliver)
            length--;
        return mass[..length];
    }

    // Who sets no days takes a day at most.
    private static LeadTimePrior PriorOf(int settingDays) => new(Math.Max(1, settingDays), UsualNineInTen * Math.Max(1, settingDays));

    private static LeadToJudge[] ToJudge(ReadOnlySpan<double> days)
    {
        var judged = new LeadToJudge[days.Length];
        for (var i = 0; i < days.Length; i++)
            judged[i] = new(days[i]);
        return judged;
    }

    private static double[] Usual(ReadOnlySpan<double> days, IReadOnlyList<int> outlying)
    {
        var usual = new List<double>(days.Length);
        for (var i = 0; i < days.Length; i++)
        {
            if (!outlying.Contains(i))
                usual.Add(days[i]);
        }
        return [.. usual];
    }
}
