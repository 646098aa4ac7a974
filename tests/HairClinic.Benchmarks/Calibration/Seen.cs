using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Benchmarks.Calibration;

/// <summary>One spell as the salon knows it.</summary>
/// <param name="Days">What somebody would note who takes every spell as ended when it was last seen.</param>
/// <param name="Entered">The time from which it had these covariates.</param>
/// <param name="IsContinued">Another stretch of the same unit's follows.</param>
/// <param name="GoesOn">Still bonded, or still in wear, today.</param>
internal sealed record Seen(
    int Client,
    Window Window,
    double[] Covariates,
    Spell Spell,
    double Days,
    bool GoesOn,
    double Entered = 0,
    bool IsContinued = false
)
{
    /// <summary>Not going on, and no part of another: what a list of spells would hold.</summary>
    public bool IsOver => !GoesOn && !IsContinued;
}
