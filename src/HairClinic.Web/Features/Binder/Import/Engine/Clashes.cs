using HairClinic.Domain.Visits;
using NodaTime;

namespace HairClinic.Web.Features.Binder;

/// <summary>Who or what is busy when. The database has the last word; this tells all clashes of a file at once, with both lines.</summary>
public sealed class Clashes
{
    private readonly List<Spell> _spells = [];

    /// <param name="what">The chair or the person.</param>
    /// <param name="line">The file's line; null for a visit that is only in the book.</param>
    public void Add(Guid what, string name, Instant from, Instant to, Visit visit, int? line) =>
        _spells.Add(new(what, name, from, to, visit, line));

    /// <summary>Pairs that want the same chair or hands at once, at least one of them from the file. Ends are not included.</summary>
    public IEnumerable<(Spell Earlier, Spell Later)> Found()
    {
        foreach (var group in _spells.GroupBy(s => s.What))
        {
            Spell? longest = null;
            foreach (var spell in group.OrderBy(s => s.From).ThenBy(s => s.Line))
            {
                if (
                    longest is not null
                    && spell.From < longest.To
                    && (spell.Line ?? longest.Line) is not null
                    && spell.Visit != longest.Visit
                )
                    yield return (longest, spell);
                if (longest is null || spell.To > longest.To)
                    longest = spell;
            }
        }
    }

    public sealed record Spell(Guid What, string Name, Instant From, Instant To, Visit Visit, int? Line);
}
