using HairClinic.Domain.Replacement;

namespace HairClinic.Domain.Clients;

/// <summary>Habits and skin as they bear on a bond, as of a day. Apart from health answers: any of the staff may read it. What is not known is absent.</summary>
[ShapesNextOrder]
public sealed class CareFact : PracticeOwned
{
    private CareFact() { }

    public CareFact(
        Guid id,
        Guid clientId,
        LocalDate asOf,
        SkinOiliness? skin,
        Sweating? sweat,
        decimal? swimsPerWeek,
        decimal? washesPerWeek,
        decimal? heatPerWeek
    )
    {
        if (new[] { swimsPerWeek, washesPerWeek, heatPerWeek }.Any(n => n is < 0 or > 50))
            throw new Refusal("Times per week lie between 0 and 50.");
        Id = id;
        ClientId = clientId;
        AsOf = asOf;
        Skin = skin;
        Sweat = sweat;
        SwimsPerWeek = swimsPerWeek;
        WashesPerWeek = washesPerWeek;
        HeatPerWeek = heatPerWeek;
    }

    public Guid ClientId { get; private set; }

    public LocalDate AsOf { get; private set; }

    public SkinOiliness? Skin { get; private set; }

    public Sweating? Sweat { get; private set; }

    public decimal? SwimsPerWeek { get; private set; }

    public decimal? WashesPerWeek { get; private set; }

    /// <summary>Times a week that hot tools touch the hair.</summary>
    public decimal? HeatPerWeek { get; private set; }
}

public enum SkinOiliness
{
    Dry,
    Normal,
    Oily,
}

public enum Sweating
{
    Low,
    Normal,
    Heavy,
}
