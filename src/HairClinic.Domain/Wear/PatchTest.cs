using NodaTime;

namespace HairClinic.Domain.Wear;

/// <summary>One patch test of one product on one client. A clear test is no guarantee.</summary>
/// <param name="AppliedAt">When the product was put on the skin.</param>
/// <param name="AppliedOn">The salon's civil day of that moment: validity is counted in calendar months from it.</param>
public readonly record struct PatchTest(Instant AppliedAt, LocalDate AppliedOn)
{
    public PatchReading FirstReading { get; init; }

    public PatchReading SecondReading { get; init; }

    public bool HasReacted => FirstReading == PatchReading.Reaction || SecondReading == PatchReading.Reaction;
}
