using HairClinic.Benchmarks.Calibration;

namespace HairClinic.Benchmarks.Worlds;

/// <summary>
/// The draws of one practice. Each thing has a stream of its own, named by whose and which it is, so that its truth is the same
/// whatever was advised before: runs before and after a change of the engine are paired.
/// </summary>
internal sealed class Streams(int seed, int practice)
{
    public Dice For(Draw what, int client = 0, int ordinal = 0)
    {
        var mixed = 0UL;
        foreach (var part in (ReadOnlySpan<int>)[seed, practice, (int)what, client, ordinal])
            mixed = Scramble(mixed ^ (uint)part);
        return new Dice((int)(mixed >> 33));
    }

    // The finaliser of SplitMix64 (Steele, Lea and Flood 2014).
    private static ulong Scramble(ulong value)
    {
        value += 0x9E3779B97F4A7C15;
        value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9;
        value = (value ^ (value >> 27)) * 0x94D049BB133111EB;
        return value ^ (value >> 31);
    }
}

/// <summary>What is drawn.</summary>
internal enum Draw
{
    Lives,
    Holds,
    Workshop,
    Client,
    Life,
    Dud,
    Repair,
    Lead,
    Wear,
    Entry,
    Hold,
    Asked,
}
