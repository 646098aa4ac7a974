using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Domain.Wear.Lifetimes;

/// <summary>How long a unit lasted, in worn days, as far as its inspections tell.</summary>
public static class UnitLifeBuilder
{
    /// <param name="looks">In order of worn days.</param>
    /// <param name="wornDays">Worn until today, or until it left service for whatever reason.</param>
    /// <param name="retired">It was retired and nobody was asked how it looked; not lost, damaged, kept as a spare or given away.</param>
    /// <remarks>
    /// The end is the first look that finds it worn out, a structural grade of 3 or more: between that look and the one before that found
    /// it sound, or as much nearer as somebody remembers. A unit put aside still wearable, lost, damaged, changed for style or gone with
    /// its client lasted at least so long. A repair is no end. One that was retired when nobody was asked how it looked, as in old books,
    /// had worn out by then: taking it as still sound would make every life look longer than it was.
    /// </remarks>
    public static Spell FromInspections(ReadOnlySpan<UnitLook> looks, double wornDays, bool retired = false)
    {
        var sound = 0.0;
        foreach (var look in looks)
        {
            if (look.WornOut == true)
                return EndOf(look, sound);
            if (look.WornOut == false)
                sound = look.WornDays;
        }
        return retired && wornDays > sound ? Spell.FromBounds(sound, wornDays) : Spell.RightCensored(Math.Max(0, wornDays));
    }

    private static Spell EndOf(UnitLook look, double sound)
    {
        var (after, by) = (Math.Max(sound, look.Span.After), look.Span.By);
        // What somebody remembers counts as far as nobody saw it sound since.
        if (by < sound || after > by)
            (after, by) = (Math.Min(sound, look.WornDays), look.WornDays);
        // Worn out before a day was over: somewhere within that first day, like a bond that lifts on its day.
        return by > 0 ? Spell.FromBounds(after, by) : Spell.LeftCensored(1);
    }

    /// <summary>The same life, and the worn days at its first repair; null where it was never repaired.</summary>
    /// <param name="repairedAt">Worn days at each repair, in any order; 0 for one before it was ever worn.</param>
    /// <remarks>
    /// A unit that was repaired was inspected and went on being worn, so it was not worn out then. A repair after its end changes nothing.
    /// </remarks>
    public static (Spell Life, double? RepairedAt) FromInspectionsAndRepairs(
        ReadOnlySpan<UnitLook> looks,
        double wornDays,
        ReadOnlySpan<double> repairedAt,
        bool retired = false
    )
    {
        var life = FromInspections(looks, wornDays, retired);
        var end = life.End == SpellEnd.After ? life.Lower : life.Upper;
        var (first, sound) = ((double?)null, life.Lower);
        foreach (var repaired in repairedAt)
        {
            if (repaired >= end && repaired > 0)
                continue;
            (first, sound) = (Math.Min(first ?? double.PositiveInfinity, Math.Max(0, repaired)), Math.Max(sound, repaired));
        }
        return first is null ? (life, null) : (Spell.FromBounds(sound, life.Upper), first);
    }
}
