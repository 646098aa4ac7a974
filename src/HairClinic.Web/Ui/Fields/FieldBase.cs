using FluentValidation.Results;
using Microsoft.AspNetCore.Components;

namespace HairClinic.Web.Ui.Fields;

/// <summary>What every field has: a label, a name that the rules know it by, a value, and the messages about it.</summary>
public abstract class FieldBase<TValue> : LiveComponent, IUnreadableField, IDisposable
{
    // Kept: when a page that was only drawn goes, its services go before its fields.
    private UnreadableFields? _unread;

    [Parameter, EditorRequired]
    public string Label { get; set; } = "";

    /// <summary>The property the rules speak of; also the form name and, unless <see cref="Id"/> is given, the element's id.</summary>
    [Parameter, EditorRequired]
    public string Name { get; set; } = "";

    [Parameter]
    public string? Id { get; set; }

    [Parameter]
    public string? Hint { get; set; }

    [Parameter]
    public TValue? Value { get; set; }

    [Parameter]
    public EventCallback<TValue?> ValueChanged { get; set; }

    [Parameter]
    public bool Required { get; set; }

    [Parameter]
    public bool Disabled { get; set; }

    [Parameter]
    public ValidationResult? Result { get; set; }

    /// <summary>Set when what was typed could not be read; shown with the rules' own messages, what was typed is kept, and nothing is saved.</summary>
    public string? Unreadable
    {
        get;
        protected set
        {
            field = value;
            (_unread ??= Unread)?.Track(this);
        }
    }

    protected string ElementId => Id ?? FieldIds.For(Name);

    protected bool Wrong => Unreadable is not null || (Result?.Errors.Any(error => error.PropertyName == Name) ?? false);

    protected string? Invalid => Wrong ? "true" : null;

    protected string? DescribedBy =>
        (Hint is not null, Wrong) switch
        {
            (true, true) => $"{ElementId}-hint {ElementId}-errors",
            (true, false) => $"{ElementId}-hint",
            (false, true) => $"{ElementId}-errors",
            _ => null,
        };

    protected Task ChangeAsync(TValue? value)
    {
        Unreadable = null;
        Value = value;
        return ValueChanged.InvokeAsync(value);
    }

    public virtual void Dispose()
    {
        _unread?.Forget(this);
        GC.SuppressFinalize(this);
    }
}

/// <summary>Element ids from property names, so that an error summary can point at the field it is about.</summary>
public static class FieldIds
{
    public static string For(string name) => "f-" + name.Replace('.', '-').Replace('[', '-').Replace(']', '-');
}
