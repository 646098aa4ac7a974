namespace HairClinic.Domain.Wear.Curves;

/// <summary>How many standard deviations to either side of the mean hold a share of a normal distribution.</summary>
public static class NormalBand
{
    public const double EightyPercent = 1.2815515655446004;
    public const double NinetyFivePercent = 1.959963984540054;
}
