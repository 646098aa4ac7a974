namespace HairClinic.Web.Shell.Edits;

/// <summary>What somebody else changed while a form was open: a field, or one row or one choice of it.</summary>
/// <param name="Of">The row the field is in, or the choice that was ticked or not; null for a plain field.</param>
/// <param name="Clashes">Both changed it, differently: what was typed stands in the form.</param>
/// <param name="TakeTheirs">Puts the other's value into the form.</param>
public sealed record FieldChange(
    FieldAttribute Field,
    object? Of,
    object? Before,
    object? Theirs,
    object? Yours,
    bool Clashes,
    Action TakeTheirs
)
{
    public string Label(FieldFormatter words) => words.Label(Field, Of);
}

/// <summary>An amount with what it is counted in.</summary>
/// <param name="Currency">ISO 4217.</param>
public sealed record MoneyAmount(long Minor, string Currency);
