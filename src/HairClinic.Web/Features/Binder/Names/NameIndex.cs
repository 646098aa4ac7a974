using HairClinic.Web.Data;

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

/// <summary>The people of the practice by name, those who left included: old books name them.</summary>
public sealed class StylistIndex
{
    private readonly Dictionary<Guid, Person> _people;

    private StylistIndex(List<Person> people)
    {
        _people = people.ToDictionary(p => p.Id);
        Names = new(people, p => p.Name);
    }

    public NameIndex<Person> Names { get; }

    public static async Task<StylistIndex> LoadAsync(ClinicDb db, CancellationToken cancellation) =>
        new(await db.People.AsNoTracking().OrderBy(p => p.Id).ToListAsync(cancellation));

    public string? NameOf(Guid? id) => id is { } some ? _people[some].Name : null;

    public Person Make(string name, Guid salonId)
    {
        var person = new Person(Guid.CreateVersion7(), name, StaffRole.Stylist);
        person.WorkIn([(Guid.CreateVersion7(), salonId)]);
        _people.Add(person.Id, person);
        return person;
    }
}
