using HairClinic.Domain.Wear.Watch;

namespace HairClinic.Web.Learning;

/// <summary>Spells as the watch of a stream reads them: with their clients' other spells, in the columns of a fit.</summary>
internal sealed class WatchedRows<T>(StoredFit fit, WatchedFit usual, IReadOnlyCollection<T> all)
    where T : WearSpell
{
    private readonly Dictionary<string, int> _columns = fit.Columns.Select((name, i) => (name, i)).ToDictionary(c => c.name, c => c.i);
    private readonly ILookup<Guid?, T> _byClient = all.ToLookup(s => s.ClientId);

    /// <param name="stream">In the order of its deliveries.</param>
    /// <param name="from">The first place at which it may have got worse.</param>
    public double[] Increments(IReadOnlyList<T> stream, int from)
    {
        var places = new Dictionary<T, int>(ReferenceEqualityComparer.Instance);
        var clients = new Dictionary<Guid, int>();
        for (var place = 0; place < stream.Count; place++)
        {
            places[stream[place]] = place;
            if (place >= from && stream[place].ClientId is { } client)
                clients.TryAdd(client, clients.Count);
        }
        var rows = clients
            .SelectMany(c => _byClient[c.Key].Select(s => RowOf(s, c.Value, places.GetValueOrDefault(s, -1))))
            .Concat(stream.Skip(from).Where(s => s.ClientId is null).Select(s => RowOf(s, -1, places[s])));
        return ShiftScan.Increments(usual, rows, stream.Count, from);
    }

    private WatchedRow RowOf(T spell, int client, int place)
    {
        var values = new double[_columns.Count];
        foreach (var column in spell.Columns)
        {
            if (_columns.TryGetValue(column.Name, out var at))
                values[at] += column.Value;
        }
        return new WatchedRow(client, place, spell.SpellAt(fit.RepairRate), spell.Window!.Value.Place, values)
        {
            MayBeDud = spell.DudKind is not null,
        };
    }
}
