namespace HairClinic.Web.Features.Lasting;

/// <summary>What is looked at, and by what it is told apart.</summary>
public enum LastingSubject
{
    Life,
    Hold,
    Cost,
}

public enum LastingSide
{
    Workshop,
    Base,
    Kind,
    Adhesive,
    Lot,
    Salon,
}

/// <summary>A question as it stands in the address: of=hold&amp;by=adhesive.</summary>
public sealed record LastingQuery(LastingSubject Of, LastingSide By)
{
    public static readonly LastingQuery First = new(LastingSubject.Life, LastingSide.Workshop);

    /// <summary>All that can be asked.</summary>
    public static IEnumerable<LastingQuery> All =>
        from subject in Enum.GetValues<LastingSubject>()
        from side in GroupingsFor(subject)
        select new LastingQuery(subject, side);

    public LifetimeKind Quantity => Of == LastingSubject.Hold ? LifetimeKind.Hold : LifetimeKind.Life;

    public string Query => $"of={EnumToQueryValue(Of)}&by={EnumToQueryValue(By)}";

    public static IReadOnlyList<LastingSide> GroupingsFor(LastingSubject subject) =>
        subject switch
        {
            LastingSubject.Life => [LastingSide.Workshop, LastingSide.Base, LastingSide.Kind],
            LastingSubject.Hold => [LastingSide.Adhesive, LastingSide.Base, LastingSide.Lot, LastingSide.Salon],
            _ => [LastingSide.Kind, LastingSide.Base],
        };

    /// <summary>What is not said is the first there is.</summary>
    /// <returns>Null for a word that means nothing here.</returns>
    public static LastingQuery? Parse(string? of, string? by)
    {
        var subject = string.IsNullOrEmpty(of) ? LastingSubject.Life : Find(Enum.GetValues<LastingSubject>(), of);
        if (subject is not { } known)
            return null;
        var side = string.IsNullOrEmpty(by) ? GroupingsFor(known)[0] : Find(GroupingsFor(known), by);
        return side is { } found ? new(known, found) : null;
    }

    public static string EnumToQueryValue<T>(T word)
        where T : struct, Enum => word.ToString().ToLowerInvariant();

    private static T? Find<T>(IEnumerable<T> words, string said)
        where T : struct, Enum => words.Where(w => EnumToQueryValue(w) == said).Select(w => (T?)w).FirstOrDefault();
}
