namespace HairClinic.Web.Features.Binder.Sheets;

/// <summary>A value read from a cell, or a sentence that says what was expected instead.</summary>
public readonly record struct Reading<T>(T? Value, Sentence? Expected)
{
    public bool Succeeded => Expected is null;

    public static implicit operator Reading<T>(T value) => new(value, null);

    public static implicit operator Reading<T>(Sentence expected) => new(default, expected);
}
