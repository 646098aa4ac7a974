namespace HairClinic.Web.Shell.Edits;

/// <summary>
/// A field of a form that edits what stands in the book. It takes part when two people edit at once (<see cref="EditMerge"/>), and is
/// called what the form calls it.
/// </summary>
/// <param name="label">The field's label on the form, a key of the localiser; {0} stands for the row the field is in.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class FieldAttribute(string label) : Attribute
{
    public string Label { get; } = label;

    /// <summary>What an empty field says, such as "any base".</summary>
    public string Nothing { get; init; } = "nothing";

    /// <summary>How a number is said, such as "{0} minutes".</summary>
    public string? Format { get; init; }

    /// <summary>For an amount in minor units: the property of the same form that holds its currency.</summary>
    public string? Currency { get; init; }

    /// <summary>For a text: a code whose name the page knows.</summary>
    public bool Named { get; init; }

    /// <summary>For rows: it matters in which order they stand.</summary>
    public bool Ordered { get; init; }

    /// <summary>For rows that have no key: they are known by their place.</summary>
    public bool ByPlace { get; init; }
}

/// <summary>Nobody types it: it says which row the form opened on, or what that row was, and is read from the book again.</summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class FromDatabaseAttribute : Attribute;

/// <summary>It belongs to the one form that is open, not to the row: what was pressed, agreed to or proposed there.</summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class FormOnlyAttribute : Attribute;
