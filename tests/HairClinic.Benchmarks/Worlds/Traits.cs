using HairClinic.Benchmarks.Calibration;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>One client: what the practice knows of them, and their two effects, which it does not.</summary>
/// <param name="FirstDay">On which they got their first unit.</param>
/// <param name="Spares">Units in house on that day, beside the one they put on.</param>
internal sealed record Traits(
    int Client,
    int Base,
    int Workshop,
    int Adhesive,
    double Oily,
    double Heat,
    int FirstDay,
    int Spares,
    double LifeEffect,
    double HoldEffect
)
{
    // Of clients wear the thin base, whose lead time is longer than its life.
    private const double Thin = 0.15;

    // Of clients have their units made by the second workshop.
    private const double Second = 0.35;

    /// <remarks>
    /// Clients came within a third of a life before day 0. Those of the thin base came with two spares, without which nobody could keep
    /// them in hair; one in ten of the others with one.
    /// </remarks>
    public static Traits Draw(int client, Dice dice, LifeTruth lives, LifeTruth holds)
    {
        var thin = dice.Chance(Thin);
        var (workshop, adhesive) = (dice.Chance(Second) ? 1 : 0, dice.Chance(0.3) ? 1 : 0);
        var (oily, heat) = (dice.Chance(0.15) ? 1.0 : 0, dice.Chance(0.4) ? 2.0 / 7 : 0);
        var (age, spare) = (dice.Share(), dice.Chance(0.1));
        return new(
            client,
            thin ? 1 : 0,
            workshop,
            adhesive,
            oily,
            heat,
            -(int)(age * PracticeRows.Lives[thin ? 1 : 0].High / 3.6),
            thin ? 2
                : spare ? 1
                : 0,
            lives.Client(dice),
            holds.Client(dice)
        );
    }
}
