using System.Collections;
using System.Collections.Concurrent;
using System.Reflection;

namespace HairClinic.Web.Shell.Edits;

/// <summary>One property of a form, or of a row in it, as <see cref="EditMerge"/> sees it.</summary>
public sealed class FormProperty
{
    private static readonly ConcurrentDictionary<Type, FormProperty[]> Known = [];

    private readonly PropertyInfo _property;

    private FormProperty(PropertyInfo property)
    {
        _property = property;
        Field = property.GetCustomAttribute<FieldAttribute>();
        FromBook = property.IsDefined(typeof(FromDatabaseAttribute));
        OfTheForm = property.IsDefined(typeof(FormOnlyAttribute));
        var item =
            property.PropertyType is { IsGenericType: true } type && type.GetGenericTypeDefinition() == typeof(List<>)
                ? type.GetGenericArguments()[0]
                : null;
        IsList = item is not null;
        Row = item?.IsAssignableTo(typeof(IFormRow)) ?? false ? item : null;
    }

    public string Name => _property.Name;

    public Type Type => _property.PropertyType;

    public FieldAttribute? Field { get; }

    public bool FromBook { get; }

    public bool OfTheForm { get; }

    public bool IsList { get; }

    /// <summary>What its rows are; null where it holds none.</summary>
    public Type? Row { get; }

    /// <summary>All that can be written of a form or a row.</summary>
    public static IReadOnlyList<FormProperty> AllOf(Type type) =>
        Known.GetOrAdd(
            type,
            t =>
                [
                    .. t.GetProperties(BindingFlags.Public | BindingFlags.Instance)
                        .Where(p => p.CanRead && p.CanWrite)
                        .Select(p => new FormProperty(p)),
                ]
        );

    public object? Get(object owner) => _property.GetValue(owner);

    /// <summary>A copy is put in: what stands in one form is never part of another.</summary>
    public void Set(object owner, object? value) => _property.SetValue(owner, DeepCopy(value));

    public IList List(object owner) => (IList)Get(owner)!;

    /// <summary>The value as it is said: money with its currency.</summary>
    public object? DisplayValue(object owner) =>
        Tidy(Get(owner)) switch
        {
            long minor when Field?.Currency is { } currency => new MoneyAmount(
                minor,
                AllOf(owner.GetType()).Single(p => p.Name == currency).Get(owner) as string ?? ""
            ),
            var value => value,
        };

    /// <summary>What the rows of a list are known by; those that are new are not.</summary>
    public List<object> Keys(IList rows) => [.. rows.Cast<IFormRow>().Select(Key).OfType<object>()];

    public object? FindRow(IList rows, object key) =>
        rows.Cast<IFormRow>().Where((row, place) => key.Equals(Key(row, place))).FirstOrDefault();

    /// <summary>Makes the row with this key the one given, or takes it out.</summary>
    public void PutOrRemoveRow(IList rows, object key, object? row)
    {
        var place = FindRow(rows, key) is { } found ? rows.IndexOf(found) : -1;
        if (row is null && place >= 0)
            rows.RemoveAt(place);
        else if (place >= 0)
            rows[place] = DeepCopy(row);
        else if (row is not null)
            rows.Add(DeepCopy(row));
    }

    /// <summary>The rows as they stand in a list, apart from it.</summary>
    public IReadOnlyList<object?> DeepCopyRows(IList rows) => [.. rows.Cast<object>().Select(DeepCopy)];

    /// <summary>Brings rows into the order of the keys; new ones stay at the end.</summary>
    public void SortByKeys(IList rows, List<object> keys)
    {
        var sorted = rows.Cast<IFormRow>()
            .OrderBy(r => r.Key is { } key && keys.IndexOf(key) is >= 0 and var place ? place : int.MaxValue)
            .ToList();
        rows.Clear();
        foreach (var row in sorted)
            rows.Add(row);
    }

    /// <summary>The same row with nothing in its lists.</summary>
    public object CopyWithListsCleared(object row)
    {
        var (emptied, fresh) = (DeepCopy(row)!, Activator.CreateInstance(Row!)!);
        foreach (var list in AllOf(Row!).Where(p => p.IsList))
            list.Set(emptied, list.Get(fresh));
        return emptied;
    }

    /// <summary>Whether two values say the same. What is read from the book again is not looked at.</summary>
    public static bool SameValue(object? one, object? other) =>
        (Tidy(one), Tidy(other)) switch
        {
            (IFormRow a, IFormRow b) => AllOf(a.GetType()).Where(p => !p.FromBook).All(p => SameValue(p.Get(a), p.Get(b))),
            (IList a, IList b) => a.Count == b.Count
                && a.Cast<object>().Zip(b.Cast<object>()).All(pair => SameValue(pair.First, pair.Second)),
            var (a, b) => Equals(a, b),
        };

    public static object? DeepCopy(object? value)
    {
        if (value is IList list && value.GetType().IsGenericType)
        {
            var copies = (IList)Activator.CreateInstance(value.GetType())!;
            foreach (var item in list)
                copies.Add(DeepCopy(item));
            return copies;
        }
        // A value is shared; only forms and their rows can be changed.
        if (value is null || !AllOf(value.GetType()).Any(p => p.Field is not null || p.FromBook || value is IFormRow))
            return value;
        var copy = Activator.CreateInstance(value.GetType())!;
        foreach (var part in AllOf(value.GetType()))
            part.Set(copy, part.Get(value));
        return copy;
    }

    // An empty box and nothing at all are the same to a person.
    private static object? Tidy(object? value) =>
        value switch
        {
            string text => text.NullIfBlank(),
            WeekdaySet { IsEmpty: true } => null,
            _ => value,
        };

    private object? Key(IFormRow row, int place) => Field!.ByPlace ? place : row.Key;
}

/// <summary>A row of a list within a form, such as a closure or a lot. Two people's rows are compared row by row.</summary>
public interface IFormRow
{
    /// <summary>What the row is known by, however it is changed; null: it is new.</summary>
    object? Key { get; }

    /// <summary>All of the row in a few words.</summary>
    string Describe(FieldFormatter words);
}
