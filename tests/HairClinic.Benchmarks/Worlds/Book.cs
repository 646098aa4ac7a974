using HairClinic.Domain.Bonding;
using HairClinic.Domain.Visits;
using HairClinic.Web.Learning;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>What the practice has written down of one client: all that advice may be made from.</summary>
internal sealed record ClientBook(int Client, int Base, int Workshop, int Adhesive, double Oily, double Heat)
{
    public Guid Id { get; } = new(Client, 0, 0, new byte[8]);

    public List<UnitRecord> Units { get; } = [];

    public List<BondRecord> Bonds { get; } = [];
}

/// <summary>One unit as it is written down; a day that has not come is null.</summary>
internal sealed class UnitRecord
{
    public Guid Id { get; set; }

    public int? OrderedOn { get; set; }

    /// <summary>For good: what was sent back to be made again has not arrived.</summary>
    public int? ArrivedOn { get; set; }

    public int? ReadyOn { get; set; }

    public bool IsRemade { get; set; }

    /// <summary>Since it was ordered, or sent back to be made again; null where it never was on order.</summary>
    public int? WaitingSince { get; set; }

    /// <summary>The first day on which it was said to wear faster than its age.</summary>
    public int? WarnedOn { get; set; }

    public int? RetiredOn { get; set; }

    public List<(int From, int? To)> Worn { get; } = [];

    public List<Look> Looks { get; } = [];

    public List<int> RepairedOn { get; } = [];

    /// <summary>It is on the head, or could go on it, or will soon.</summary>
    public bool IsInHouse => ArrivedOn is not null && RetiredOn is null;

    public bool IsInFlight => ArrivedOn is null;

    /// <summary>It is on the head.</summary>
    public bool IsWorn => Worn.Count > 0 && Worn[^1].To is null;

    public int WornDays(int day)
    {
        var sum = 0;
        foreach (var (from, to) in Worn)
            sum += (to ?? day) - from;
        return sum;
    }
}

/// <summary>What a take-down found.</summary>
internal sealed record Look(int Day, InspectionGrades Grades);

/// <summary>One bond.</summary>
internal sealed class BondRecord(int appliedOn, int dueOn)
{
    public int AppliedOn => appliedOn;

    public int DueOn => dueOn;

    /// <summary>The adhesive's lot: each is used up in 60 days.</summary>
    public int Lot => LotOf(appliedOn);

    public static int LotOf(int day) => (day - BadLot.FirstDay + 100 * BadLot.Days) / BadLot.Days;

    /// <summary>Null while it is on the head.</summary>
    public HoldObservation? Held { get; set; }

    public int? RemovedOn { get; set; }

    /// <summary>As it was last read once it was over, and how many cohorts were named then.</summary>
    public (HoldSpell Spell, int Cohorts)? Known { get; set; }
}
