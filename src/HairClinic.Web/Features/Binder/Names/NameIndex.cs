namespace HairClinic.Web.Features.Binder.Names;

/// <summary>Things of the book by name, as people write names: the exact one first, else the same in other capitals.</summary>
public sealed class NameIndex<T>
    where T : class
{
    private readonly Dictionary<string, T> exact = new(StringComparer.Ordinal);
    private readonly Dictionary<string, T> loose = new(StringComparer.OrdinalIgnoreCase);

    public NameIndex(IEnumerable<T> things, Func<T, string> nameOf)
    {
        foreach (var thing in things)
            Add(nameOf(thing), thing);
    }

    public IEnumerable<string> Names => exact.Keys.Order(StringComparer.Ordinal);

    public T? Find(string name) => exact.GetValueOrDefault(name) ?? loose.GetValueOrDefault(name);

    public void Add(string name, T thing)
    {
        exact.TryAdd(name, thing);
        loose.TryAdd(name, thing);
    }
}
