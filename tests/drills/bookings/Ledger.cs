using System.Collections.Concurrent;
using NodaTime;

namespace HairClinic.BookingDrill;

/// <summary>What was sent and what was acknowledged, kept where no kill reaches it.</summary>
internal sealed class Ledger
{
    private readonly ConcurrentDictionary<string, int> _counts = new();

    /// <summary>By key: whose booking it was to be.</summary>
    public ConcurrentDictionary<Guid, Guid> Bookings { get; } = new();

    /// <summary>
    /// By key: where a visit was to be put. Of two sendings of one key at the same moment one may be told that the place is taken and
    /// the other that it is theirs, when a third frees it in between; so what counts is whether the key is kept.
    /// </summary>
    public ConcurrentDictionary<Guid, (Guid Visit, Instant Start)> Placed { get; } = new();

    public ConcurrentDictionary<Guid, Act> Acknowledged { get; } = new();

    public ConcurrentBag<string> Wrong { get; } = [];

    public ConcurrentBag<double> Milliseconds { get; } = [];

    public void Count(string what) => _counts.AddOrUpdate(what, 1, (_, n) => n + 1);

    public string Counts => string.Join(", ", _counts.OrderBy(c => c.Key).Select(c => $"{c.Key} {c.Value}"));
}

/// <summary>One acknowledged write.</summary>
/// <param name="Visit">Null where the answer does not name it.</param>
/// <param name="Start">Where it put the visit; null where it called it off, or touched none.</param>
internal sealed record Act(string Deed, Guid Client, Guid? Visit, Instant? Start, bool CalledOff = false);
