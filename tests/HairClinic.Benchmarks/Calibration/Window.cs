using HairClinic.Domain.Wear.Lifetimes;

namespace HairClinic.Benchmarks.Calibration;

/// <summary>A practice's row: days within which eight of ten are expected to end.</summary>
internal sealed record Window(double Low, double High)
{
    public WindowPrior In(LifeDistribution distribution) => WindowPrior.FromWindow(distribution, Low, High);
}
