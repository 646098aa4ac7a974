namespace HairClinic.Domain.Wear;

/// <summary>Where a bond stands on a day.</summary>
public enum BondState
{
    /// <summary>Fresh: no water, sweat or sport yet. Known only when the instant of application is.</summary>
    Curing,

    /// <summary>Sound, and before its window.</summary>
    Held,

    /// <summary>Sound, and inside its window, both ends included.</summary>
    WindowOpen,

    /// <summary>Sound as far as known, and past the window's last day.</summary>
    Overdue,

    /// <summary>An edge is known to have come up; the unit is still on the head.</summary>
    Lifted,

    /// <summary>Taken down.</summary>
    Removed,
}
