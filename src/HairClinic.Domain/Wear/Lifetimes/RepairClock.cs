using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>
/// The age of a unit as its wear has it: worn days until its first repair, and from then on eᵏ days for each worn day, so that a repaired
/// unit may wear faster, or slower, than it did.
/// </summary>
/// <param name="RepairedAt">Worn days at the first repair.</param>
/// <param name="LogRate">κ; 0 where a repair changes nothing. The default is the clock of a unit that was never repaired.</param>
public readonly record struct RepairClock(double RepairedAt, double LogRate)
{
    /// <summary>The unit's own age after so many worn days.</summary>
    public double AgeAfter(double wornDays) =>
        LogRate == 0 || wornDays <= RepairedAt ? wornDays : RepairedAt + (wornDays - RepairedAt) * Math.Exp(LogRate);

    /// <summary>The worn days after which it has that age.</summary>
    public double WornDaysAt(double age) =>
        LogRate == 0 || age <= RepairedAt ? age : RepairedAt + (age - RepairedAt) * Math.Exp(-LogRate);

    /// <summary>A life in worn days as one by its own age.</summary>
    public Spell Read(Spell life) =>
        life.End switch
        {
            _ when LogRate == 0 => life,
            SpellEnd.At => Spell.Exact(AgeAfter(life.Lower), life.Weight),
            SpellEnd.After => Spell.RightCensored(AgeAfter(life.Lower), life.Weight),
            _ => Spell.FromBounds(AgeAfter(life.Lower), AgeAfter(life.Upper), life.Weight),
        };
}
