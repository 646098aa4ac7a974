using HairClinic.Domain.Wear.Curves;

namespace HairClinic.Benchmarks.Calibration;

/// <summary>One spell as the salon knows it.</summary>
/// <param name="Days">What somebody would note who takes every spell as ended when it was last seen.</param>
/// <param name="GoesOn">Still bonded, or still in wear, today.</param>
internal sealed record Seen(int Client, Window Window, double[] Covariates, Spell Spell, double Days, bool GoesOn);
