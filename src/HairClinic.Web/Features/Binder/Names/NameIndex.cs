namespace HairClinic.Web.Features.Binder;

/// <summary>Things of the book by name, as people write names: the exact one first, else the same in other capitals.</summary>
public sealed class NameIndex<T>
    where T : class
{
    private readonly Dictionary<string, T> _exact = new(StringComparer.Ordinal);
    private readonly Dictionary<string, T> _loose = new(StringComparer.OrdinalIgnoreCase);

    public NameIndex(IEnumerable<T> things, Func<T, string> nameOf)
    {
        foreach (var thing in things)
            Add(nameOf(thing), thing);
    }

    public IEnumerable<string> Names => _exact.Keys.Order(StringComparer.Ordinal);

    public T? Find(string name) => _exact.GetValueOrDefault(name) ?? _loose.GetValueOrDefault(name);

    public void Add(string name, T thing)
    {
        _exact.TryAdd(name, thing);
        _loose.TryAdd(name, thing);
    }
}
