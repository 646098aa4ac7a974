using HairClinic.Web.Data;

namespace HairClinic.Web.Features.Wear;

/// <summary>How many are in each part. Whoever closes soonest is looked at first, and in a very large book only so many.</summary>
/// <param name="AtLeast">There are more bonds than were looked at, so every number may be higher.</param>
public sealed record DueCounts(IReadOnlyDictionary<DuePart, int> Parts, bool AtLeast)
{
    public const int Cap = 5_000;

    public int CountOf(DuePart part) => Parts.GetValueOrDefault(part);

    internal static async Task<DueCounts> ReadAsync(ClinicDb db, IReadOnlyList<SalonLocalDateGroup> days, CancellationToken cancellation)
    {
        var groups = await days.Select(day => Marks(db, day))
            .Aggregate(Queryable.Concat)
            .GroupBy(m => m.Part)
            .Select(g => new { Part = g.Key, Count = g.Count() })
            .ToListAsync(cancellation);
        var parts = groups
            .GroupBy(g => (DuePart)g.Part, g => g.Count)
            .Where(g => g.Key != DuePart.All)
            .ToDictionary(g => g.Key, g => g.Sum());
        parts[DuePart.All] = ToCall.Sum(part => parts.GetValueOrDefault(part));
        var plans = await GapRiskRows
            .PlansToShow(db, [.. days.SelectMany(d => d.Salons)])
            .GroupBy(p => p.AtRisk)
            .Select(g => new { AtRisk = g.Key, Count = g.Count() })
            .ToDictionaryAsync(g => g.AtRisk, g => g.Count, cancellation);
        parts[DuePart.AtRisk] = plans.GetValueOrDefault(true);
        parts[DuePart.Spares] = plans.GetValueOrDefault(false);
        return new(parts, groups.Sum(g => g.Count) >= Cap);
    }

    private static readonly DuePart[] ToCall = [DuePart.Lifted, DuePart.Overdue, DuePart.Open, DuePart.Opening];

    private static IQueryable<Mark> Marks(ClinicDb db, SalonLocalDateGroup day)
    {
        var (today, soon) = (day.Today, day.Soon);
        return DueBondQueries
            .OpenBonds(db, day)
            .OrderBy(b => b.ClosesOn)
            .ThenBy(b => b.BondId)
            .Take(Cap)
            .Select(b => new Mark
            {
                // Zero is nobody's part: their window is still far off.
                Part =
                    !b.Lifted && b.OpensOn > soon ? 0
                    : b.Booked ? (int)DuePart.Booked
                    : b.Lifted ? (int)DuePart.Lifted
                    : b.PutOff ? (int)DuePart.PutOff
                    : b.ClosesOn < today ? (int)DuePart.Overdue
                    : b.OpensOn <= today ? (int)DuePart.Open
                    : (int)DuePart.Opening,
            });
    }

    private sealed class Mark
    {
        public required int Part { get; init; }
    }
}

/// <summary>The parts of the list. Each client is in one of lifted … put off; whoever is at risk of a gap may be in one of them too.</summary>
public enum DuePart
{
    /// <summary>Everyone who wants a call: lifted, overdue, open and opening, worst first.</summary>
    All,

    /// <summary>An edge came up, and no visit is booked. A lift is never put off.</summary>
    Lifted,

    /// <summary>The window has closed.</summary>
    Overdue,

    Open,

    /// <summary>The window opens within the practice's number of days.</summary>
    Opening,

    /// <summary>In one of the parts above, but a rebond, a fitting or a lift's repair is booked.</summary>
    Booked,

    /// <summary>Asked for later; back on the list on the day that was named.</summary>
    PutOff,

    /// <summary>May lack a unit that still wears well: a chance beyond what the practice accepts, worst first, bonded or not.</summary>
    AtRisk,

    /// <summary>At no such risk, but the spare that is always kept is neither in house nor on order.</summary>
    Spares,
}
