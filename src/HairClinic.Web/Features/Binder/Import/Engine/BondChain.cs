namespace HairClinic.Web.Features.Binder;

/// <summary>
/// A head wears one unit at a time, and a unit is on one head: of all their bonds only the last can be open, and
/// none begins before the one before it came off.
/// </summary>
public sealed class BondChain
{
    private readonly List<(Bond Bond, int? Line)> _links = [];

    /// <param name="line">The file's line; null for a bond that is only in the book.</param>
    public void Add(Bond bond, int? line) => _links.Add((bond, line));

    /// <summary>Each bond that should have ended before the next one began, with that next one.</summary>
    public IEnumerable<(Bond Bond, int? Line, Bond Next, int? NextLine)> Breaks()
    {
        var ordered = _links.OrderBy(l => l.Bond.AppliedOn).ThenBy(l => l.Bond.AppliedAt ?? Instant.MinValue).ThenBy(l => l.Line).ToList();
        return ordered
            .Zip(ordered.Skip(1))
            .Where(pair => pair.First.Bond.RemovedOn is not { } removed || removed > pair.Second.Bond.AppliedOn)
            .Select(pair => (pair.First.Bond, pair.First.Line, pair.Second.Bond, pair.Second.Line));
    }
}
