namespace HairClinic.Domain.Replacement;

/// <summary>The practice's row for a workshop and a kind of unit: days in half of the orders, and in nine of ten.</summary>
public readonly record struct LeadTimePrior
{
    /// <summary>Predictive degrees of freedom before any order arrived.</summary>
    public const int DegreesOfFreedom = 4;

    // 90 % point of Student's t with 4 degrees of freedom.
    private const double NinetyPercent = 1.5332;

    public LeadTimePrior(double halfDays, double nineInTenDays)
    {
        if (!(halfDays > 0) || !double.IsFinite(nineInTenDays) || !(nineInTenDays > halfDays))
            throw new ArgumentOutOfRangeException(nameof(nineInTenDays), "A lead time needs 0 < P50 < P90.");
        (Centre, Scale) = (Math.Log(halfDays), Math.Log(nineInTenDays / halfDays) / NinetyPercent);
    }

    private LeadTimePrior(double centre, double scale, bool asIs) => (Centre, Scale, _) = (centre, scale, asIs);

    /// <summary>Another half time with the same spread about it.</summary>
    public LeadTimePrior Moved(double halfDays) => new(Math.Log(halfDays), Scale, asIs: true);

    /// <summary>Of ln Λ.</summary>
    public double Centre { get; }

    /// <summary>Of ln Λ, as a Student-t.</summary>
    public double Scale { get; }
}
