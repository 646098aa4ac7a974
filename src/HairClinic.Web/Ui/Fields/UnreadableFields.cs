using FluentValidation.Results;

namespace HairClinic.Web.Ui.Fields;

/// <summary>A field in which something stands that could not be read: its value is still the one before.</summary>
public interface IUnreadableField
{
    string Name { get; }

    /// <summary>Why not, in words; null where it could be read.</summary>
    string? Unreadable { get; }

    /// <summary>What its form's rules said last: tells the forms of a page apart. Null where it has not been asked yet.</summary>
    ValidationResult? Result { get; }
}

/// <summary>The fields of one page that could not be read: none of them may be saved with the value it had before.</summary>
public sealed class UnreadableFields
{
    private readonly List<IUnreadableField> _fields = [];

    internal void Track(IUnreadableField field)
    {
        _fields.Remove(field);
        if (field.Unreadable is not null)
            _fields.Add(field);
    }

    internal void Forget(IUnreadableField field) => _fields.Remove(field);

    /// <summary>What stands in the way of saving the form of which this was the last check.</summary>
    public IEnumerable<ValidationFailure> FaultsOfForm(ValidationResult? check) =>
        _fields.Where(f => f.Result is null || ReferenceEquals(f.Result, check)).Select(f => new ValidationFailure(f.Name, f.Unreadable));
}
