using HairClinic.Benchmarks.Calibration;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>What is true of one unit, and unseen.</summary>
/// <param name="fresh">Worn days it would last unrepaired.</param>
/// <param name="repairAt">Worn days after which something tears and is repaired; infinite where nothing does.</param>
internal sealed class UnitTruth(Delivery delivery, double fresh, double repairAt, double afterRepair, WearPath path)
{
    private int? _repairedAt;

    public Delivery Delivery => delivery;

    public UnitRecord Record { get; } = new();

    /// <summary>It is worn out, whether somebody has found it so or not.</summary>
    public bool HasEnded { get; set; }

    /// <summary>It was delivered by a workshop that had become worse.</summary>
    public required bool IsOfDecline { get; init; }

    /// <summary>What goes wrong when somebody writes grades down.</summary>
    public required Dice Entries { get; init; }

    /// <summary>Worn days it lasts in all, its repair taken into account, whether it lies ahead or behind.</summary>
    public double Life => Turn < fresh ? Turn + afterRepair * (fresh - Turn) : fresh;

    /// <summary>Worn days after which its client comes to have it repaired; infinite once it is.</summary>
    public double RepairAt => _repairedAt is null && repairAt < fresh ? repairAt : double.PositiveInfinity;

    private double Turn => _repairedAt ?? repairAt;

    public void Repair(int worn) => _repairedAt = worn;

    public bool IsWornOut(int worn) => worn >= Life;

    /// <summary>Shedding, knots, base and fit as they truly are.</summary>
    public int[] Grades(int worn)
    {
        // From a repair on the same damage comes quicker.
        var used = worn <= Turn ? worn / fresh : (Turn + (worn - Turn) / afterRepair) / fresh;
        return path.Grades(IsWornOut(worn) ? Math.Max(1, used) : Math.Min(used, 0.999));
    }
}
