namespace HairClinic.Domain.Wear.Grades;

/// <summary>What a unit's take-downs say of how far it has worn, in order, as far as it is evidence.</summary>
/// <remarks>
/// Left out is what tells nothing new. The look that found the unit worn out, and all after it: its grades follow from the end itself,
/// which is known already, and taking them in makes grades that mean nothing look as if they told of ends. Looks after the first repair:
/// what is mended was not worn. An entry that is known to be a copy: it is the one before it, which is also the one that the next may
/// copy. A look at which nothing can be said of a threshold is none for it.
/// A bonding writes no grade: that the unit still wears is in the bounds of its life.
/// </remarks>
public sealed class UnitGrades
{
    private UnitGrades(GradeEntry[] slight, GradeEntry[] fair, double[] days) => (Slight, Fair, Days) = (slight, fair, days);

    public static UnitGrades None { get; } = new([], [], []);

    /// <summary>Looks that say something.</summary>
    public int Looks => Days.Length;

    /// <summary>Worn days at the last of them; 0 without any.</summary>
    public double LastDay => Looks > 0 ? Days[^1] : 0;

    internal GradeEntry[] Slight { get; }

    internal GradeEntry[] Fair { get; }

    /// <summary>Worn days at each of the looks.</summary>
    internal double[] Days { get; }

    /// <param name="looks">In any order.</param>
    /// <param name="repairedAt">Worn days at the first repair; a look on that very day came before it.</param>
    public static UnitGrades FromLooks(IEnumerable<GradeLook> looks, double repairedAt = double.PositiveInfinity)
    {
        var (slight, fair, days) = (new List<GradeEntry>(), new List<GradeEntry>(), new List<double>());
        foreach (var look in looks.OrderBy(look => look.WornDays).TakeWhile(look => !look.WornOut && look.WornDays <= repairedAt))
        {
            if (look.IsCopy || !(look.WornDays > 0) || (look.Slight ?? look.Fair) is null)
                continue;
            days.Add(look.WornDays);
            var log = Math.Log(look.WornDays);
            if (look.Slight is { } one)
                slight.Add(new(log, one));
            if (look.Fair is { } two)
                fair.Add(new(log, two));
        }
        return days.Count == 0 ? None : new([.. slight], [.. fair], [.. days]);
    }

    /// <summary>What was known right after the first so many looks.</summary>
    public UnitGrades Until(int looks)
    {
        if (looks >= Looks)
            return this;
        if (looks <= 0)
            return None;
        var last = Math.Log(Days[looks - 1]);
        return new([.. Slight.TakeWhile(e => e.LogDays <= last)], [.. Fair.TakeWhile(e => e.LogDays <= last)], Days[..looks]);
    }
}

/// <param name="LogDays">ln of the worn days at the look.</param>
/// <param name="Reached">What was written: the threshold has been passed.</param>
internal readonly record struct GradeEntry(double LogDays, bool Reached);
